using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Drafting;

/// <summary>
/// A design of our own, stitch by stitch in tape units: what a demo design or a registration target is made of. A
/// draft begins at (0, 0) with the needle up. Every figure begins with a penetration at its first point and is
/// connected to the one before it by thread, unless a trim, a move or a color stop lies between.
/// </summary>
public sealed class Draft
{
    private readonly List<TapeMove> _moves = [];

    /// <summary>Consecutive jump records that a trim is made of, at least 1.</summary>
    public int TrimJumps { get; init; } = 3;

    /// <summary>Where the needle is.</summary>
    public TapePoint At { get; private set; } = TapePoint.Origin;

    public IReadOnlyList<TapeMove> Moves => _moves;

    /// <summary>One penetration; none where the needle is in this very hole already.</summary>
    public Draft Stitch(TapePoint to) =>
        to == At && _moves is [.., { Kind: RecordKind.Stitch }] ? this : Add(RecordKind.Stitch, to);

    /// <summary>Penetrations one after the other.</summary>
    public Draft Stitches(IEnumerable<TapePoint> points) => points.Aggregate(this, (draft, point) => draft.Stitch(point));

    /// <summary>A move with the needle up: one jump record, more where the way needs them.</summary>
    public Draft Move(TapePoint to) => Add(RecordKind.Jump, to);

    /// <summary>Cuts the thread and goes on at another place.</summary>
    public Draft Trim(TapePoint to)
    {
        var trim = new TrimMoves(TrimJumps, TrimPattern.OutAndBack, Tape.MaxMove, CenterX: At.X);
        foreach (var move in trim.Between(At, to))
            Add(move.Kind, move.To);
        return this;
    }

    /// <summary>Stops for the next color, here.</summary>
    public Draft ColorStop() => Add(RecordKind.ColorStop, At);

    /// <summary>A tie: two short stitches toward a point and back to here.</summary>
    /// <param name="toward">Where the sewing lies, so that the tie hides under it.</param>
    /// <param name="length">Length of a tie stitch, tape units.</param>
    public Draft Tie(TapePoint toward, int length = 7)
    {
        var (from, tip) = (At, Way.Toward(At, toward, length));
        return Stitches([from, tip, from, tip, from]);
    }

    /// <summary>Running stitches along a line of points, each leg in equal stitches not longer than given.</summary>
    public Draft Run(int stitchLength, params IReadOnlyList<TapePoint> points) =>
        Stitches(new Way(points).InStitches(stitchLength));

    /// <summary>A satin column with its underlay.</summary>
    public Draft Sew(Column column)
    {
        column.Sew(this);
        return this;
    }

    /// <summary>A fill with its underlay.</summary>
    public Draft Sew(Fill fill)
    {
        fill.Sew(this);
        return this;
    }

    /// <summary>The whole file.</summary>
    public byte[] ToBytes(string label) => TapeWriter.Write(new(label, Moves));

    /// <summary>The tape as it reads back.</summary>
    public Tape ToTape(string label)
    {
        var read = TapeReader.Read(ToBytes(label), new() { TrimJumps = TrimJumps });
        return read.Value ?? throw new InvalidOperationException(read.Violations[0].Message);
    }

    private Draft Add(RecordKind kind, TapePoint to)
    {
        _moves.Add(new(kind, to));
        At = to;
        return this;
    }
}
