using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>One thing the machine shall do: go somewhere, and there penetrate, nothing, or stop for a color.</summary>
/// <param name="Kind">Stitch, jump or color stop.</param>
/// <param name="To">Where it happens, tape units from the start point of the tape.</param>
public readonly record struct TapeMove(RecordKind Kind, TapePoint To);

/// <summary>A tape to write.</summary>
/// <param name="Label">Its name; what a header cannot hold is replaced or cut off.</param>
/// <param name="Moves">What the machine does, in time order, beginning at (0, 0).</param>
public sealed record TapeToWrite(string Label, IReadOnlyList<TapeMove> Moves)
{
    /// <summary>Longest move of one record per axis, 1 to 121 tape units.</summary>
    public int MaxMove { get; init; } = Tape.MaxMove;
}

/// <summary>
/// Writes a tape (DST): header, records, one end record, one closing byte. A move that is too long for one record is
/// led there by jump records, of which the last share belongs to the move itself.
/// Published layout: EduTech Wiki, University of Geneva, "Embroidery format DST".
/// </summary>
public static class TapeWriter
{
    private const int EndBytes = Tape.RecordBytes + 1;

    /// <summary>The whole file. The header announces the records before the end record.</summary>
    public static byte[] Write(TapeToWrite tape)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tape.MaxMove, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tape.MaxMove, Tape.MaxMove);
        var records = Records(tape);
        var file = new byte[Tape.HeaderBytes + (records.Count * Tape.RecordBytes) + EndBytes];
        Header(tape, records.Count).CopyTo(file, 0);
        var next = Tape.HeaderBytes;
        foreach (var record in records)
            Put(file, ref next, record);
        Put(file, ref next, RecordLayout.End << 16);
        file[next] = RecordLayout.CloseByte;
        return file;
    }

    private static List<int> Records(TapeToWrite tape)
    {
        var records = new List<int>(tape.Moves.Count);
        var at = TapePoint.Origin;
        foreach (var move in tape.Moves)
        {
            var way = MoveSplit.Within(at, move.To, tape.MaxMove);
            for (var k = 1; k <= way.Count; k++)
            {
                var step = way.At(k) - way.At(k - 1);
                records.Add(RecordLayout.BitsOf(k == way.Count ? move.Kind : RecordKind.Jump, step.X, step.Y));
            }

            at = move.To;
        }

        return records;
    }

    private static byte[] Header(TapeToWrite tape, int records)
    {
        var stitches = tape.Moves.Where(move => move.Kind == RecordKind.Stitch);
        var needle = stitches.Aggregate((Box?)null, (box, stitch) => box?.Union(stitch.To) ?? Box.Of(stitch.To));
        return HeaderText.Write(
            HeaderText.LabelFrom(tape.Label),
            records,
            tape.Moves.Count(move => move.Kind == RecordKind.ColorStop),
            needle ?? Box.Of(TapePoint.Origin),
            tape.Moves.Count == 0 ? TapePoint.Origin : tape.Moves[^1].To);
    }

    private static void Put(byte[] file, ref int next, int record)
    {
        for (var shift = 0; shift < 24; shift += 8)
            file[next++] = (byte)((record >> shift) & 0xFF);
    }
}
