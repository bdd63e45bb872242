using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tapes;

/// <summary>
/// How a cut is written for a machine that takes a run of jump records as a trim: at least
/// <paramref name="Jumps"/> of them, landing on the next penetration, which is then a stitch without a move.
/// </summary>
/// <param name="Jumps">Jump records that mean a trim, 1 to 10.</param>
/// <param name="Pattern">How they are laid out when the way is shorter than their number in tape units.</param>
/// <param name="MaxMove">Longest move of one record per axis, tape units.</param>
/// <param name="CenterX">Middle of the design, tape units; a way out goes toward it and so stays inside the field.</param>
public sealed record TrimMoves(int Jumps, TrimPattern Pattern, int MaxMove, int CenterX)
{
    // From memory, no source: some machines drop jump records without a move, so a short way goes out and back by 1 mm.
    private const int OutUnits = Tenths.PerMillimeter;

    /// <summary>Jumps from one penetration to the next, and the stitch there.</summary>
    public IEnumerable<TapeMove> Between(TapePoint from, TapePoint to)
    {
        var reach = (to - from).Reach;
        var jumps = Pattern == TrimPattern.OutAndBack && reach < Jumps
            ? OutAndBack(from, to)
            : Spread(from, to, Math.Max(Jumps, MoveSplit.RecordsFor(reach, MaxMove)));
        return jumps.Append(new(RecordKind.Stitch, to));
    }

    private static IEnumerable<TapeMove> Spread(TapePoint from, TapePoint to, int count)
    {
        var way = new MoveSplit(from, to, count);
        return Enumerable.Range(1, count).Select(k => new TapeMove(RecordKind.Jump, way.At(k)));
    }

    private IEnumerable<TapeMove> OutAndBack(TapePoint from, TapePoint to)
    {
        var backJumps = Math.Max(1, Jumps - 1);
        var side = CenterX < from.X ? -1 : 1;
        if (Math.Abs(to.X - from.X - (side * OutUnits)) < backJumps)
            side = -side;
        var turn = from + new TapePoint(side * OutUnits, 0);
        return Spread(turn, to, backJumps).Prepend(new(RecordKind.Jump, turn));
    }
}
