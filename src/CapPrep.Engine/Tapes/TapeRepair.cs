using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tapes;

/// <summary>What the tape for the machine shall be like.</summary>
public sealed record RepairSettings
{
    /// <summary>The tape's name; what a header cannot hold is replaced or cut off.</summary>
    public required string Label { get; init; }

    /// <summary>Where the tape shall start and end, in units of the received tape; null: as received.</summary>
    public TapePoint? StartAndEnd { get; init; }

    /// <summary>Turn the design by 180 degrees for the cap frame.</summary>
    public bool Turn180 { get; init; }

    public TrimBy TrimBy { get; init; } = TrimBy.Jumps;

    /// <summary>Consecutive jump records that mean a trim, for reading and for writing.</summary>
    public int TrimJumps { get; init; } = 3;

    public TrimPattern TrimPattern { get; init; } = TrimPattern.OutAndBack;

    /// <summary>Longest move of one record per axis, 1 to 121 tape units.</summary>
    public int MaxMove { get; init; } = Tape.MaxMove;

    /// <summary>Settings for a machine's rules; the turn is decided with the ticket, not here.</summary>
    public static RepairSettings For(MachineTape machine, string label) => new()
    {
        Label = label,
        TrimBy = machine.TrimBy,
        TrimJumps = machine.TrimCount,
        TrimPattern = machine.TrimPattern,
        MaxMove = Math.Min(Tape.MaxMove, Tenths.FromMillimeters(machine.MaxMoveMm).Value),
    };
}

/// <summary>
/// Writes a received tape again for a machine: every needle point, every color stop between them and their order as
/// received, everything around them in order. Stops before the first and after the last penetration and those of
/// empty color blocks are left out; a record without a known meaning becomes a jump.
/// </summary>
public static class TapeRepair
{
    /// <summary>
    /// The tape to sew. <see cref="TapeToSew.StitchesEqual"/> is found by reading the written bytes again;
    /// <see cref="TapeToSew.OriginShift"/> is the new start point in units of the received tape, not turned.
    /// </summary>
    public static TapeToSew Rewrite(Tape received, RepairSettings settings)
    {
        var stitches = StitchSequence.Of(received, settings.TrimJumps);
        var repaired = RepairedMoves.Of(received, stitches, settings);
        var shift = settings.StartAndEnd ?? TapePoint.Origin;
        var bytes = TapeWriter.Write(new(settings.Label, Placed(repaired.Moves, shift, settings.Turn180))
        {
            MaxMove = settings.MaxMove,
        });
        return new(
            bytes,
            StitchesAreEqual(stitches, ReadAgain(bytes, settings), shift, settings.Turn180),
            [.. Changes(received, repaired, settings, shift).Order()],
            shift);
    }

    private static List<TapeMove> Placed(IReadOnlyList<TapeMove> moves, TapePoint start, bool turn) =>
        [.. moves.Select(move => move with { To = turn ? (move.To - start).Turned() : move.To - start })];

    private static StitchSequence ReadAgain(byte[] bytes, RepairSettings settings)
    {
        var read = TapeReader.Read(bytes, new() { MaxRecords = int.MaxValue, TrimJumps = settings.TrimJumps });
        return read.Succeeded
            ? StitchSequence.Of(read.Value, settings.TrimJumps)
            : throw new InvalidOperationException($"The written tape cannot be read: {read.Violations[0].Message}");
    }

    private static bool StitchesAreEqual(StitchSequence received, StitchSequence written, TapePoint start, bool turned)
    {
        if (received.Count != written.Count)
            return false;
        for (var i = 0; i < received.Count; i++)
        {
            var at = turned ? written.At(i).Turned() : written.At(i);
            if (at + start != received.At(i)
                || written.Block[i] != received.Block[i]
                || written.Relations[i] != received.Relations[i])
                return false;
        }

        return true;
    }

    private static IEnumerable<TapeChange> Changes(
        Tape received, RepairedMoves repaired, RepairSettings settings, TapePoint start)
    {
        if (received.Quirks.Any(quirk => TapeRules.OfContainer.Contains(quirk.Rule)))
            yield return TapeChange.Container;
        if (received.Header.Label != HeaderText.LabelFrom(settings.Label))
            yield return TapeChange.Label;
        if (repaired.TrimsChanged)
            yield return TapeChange.Trims;
        if (settings.StartAndEnd is not null
            && (start != TapePoint.Origin || received.PositionBehind(received.RecordCount - 1) != start))
            yield return TapeChange.StartEnd;
        if (settings.Turn180)
            yield return TapeChange.Turned180;
    }
}
