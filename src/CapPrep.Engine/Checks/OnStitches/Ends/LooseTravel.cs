using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Ends;

/// <summary>
/// Thread that lies loose on cover or cloth from one place to the next: fingers and buttons catch in it (fact row L45).
/// Silent where later stitches cover it, and for machines that trim at every move.
/// </summary>
internal static class LooseTravel
{
    internal static readonly Check Check = new("stitch.loose-travel", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (TrimsEveryMove(subject.Setup.Machine) || rule.Limits.Mildest is not { } shortest)
            return [];
        var moves = new LooseMoves(subject);
        return moves.LongerThan(shortest)
            .Select(point => new Occurrence(subject.PlaceOf(point - 1, point)) { Measured = moves.OpenMm(point) })
            .Where(move => rule.Limits.PassedBy(move.Measured) is not null);
    }

    private static bool TrimsEveryMove(Machine machine) => machine.Tape is { TrimBy: TrimBy.Jumps, TrimCount: 1 };

    private static string Say(Report report)
    {
        var count = Figure.Count(report.WorstFirst.Count, "thread lies", "threads lie");
        return $"{count} loose from one place to the next, the longest over {Figure.Mm(report.Measured)}.";
    }
}
