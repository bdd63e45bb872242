using System.Globalization;
using CapPrep.Engine;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tickets;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Preparations;

/// <summary>
/// What is promised of every proposed tape, judged from outside: by the preparation as it is given out and by the second
/// tape reader.
/// </summary>
public static class OrderPromises
{
    /// <summary>Every broken promise in a sentence; empty is a pass. The tape must have been proposed.</summary>
    public static IReadOnlyList<string> Broken(byte[] received, Preparation preparation) =>
    [
        .. Clauses(preparation),
        .. MustFollow(preparation),
        .. Colors(received, preparation),
        .. Penetrations(received, preparation),
    ];

    /// <summary>The proposed tape as an order of its own, with the threads at the blocks that sew them now.</summary>
    public static Preparation PrepareAgain(Preparation preparation, Ticket ticket)
    {
        var threads = preparation.Order!.Plan.Blocks.Select(block => ticket.Threads![block.Received - 1] with { Block = block.Step });
        return StarterShop.Prepare(preparation.ProposedTape!, ticket with { Threads = [.. threads] });
    }

    /// <summary>A settled proposal, sent again as a tape of its own, keeps its order.</summary>
    public static IEnumerable<string> Moved(Preparation first, SewOrder again)
    {
        if (first.IsSettled && again.Used == UsedOrder.Proposed)
            yield return "a settled order is changed again";
    }

    private static IEnumerable<string> Clauses(Preparation preparation)
    {
        var clauses = preparation.LossCheck?.Clauses ?? [];
        if (clauses.Count != 10)
            yield return $"{clauses.Count} clauses instead of ten";
        foreach (var clause in clauses.Where(clause => !clause.Passed))
            yield return $"clause {clause.Clause}: {clause.Fault}";
    }

    private static IEnumerable<string> MustFollow(Preparation preparation)
    {
        var place = new int[preparation.Order!.Order.Count];
        for (var at = 0; at < place.Length; at++)
            place[preparation.Order.Order[at]] = at;
        return preparation.Reading.MustFollow
            .Where(pair => place[pair.Before] >= place[pair.After])
            .Select(pair => string.Create(CultureInfo.InvariantCulture, $"element {pair.After} is sewn before {pair.Before}"));
    }

    private static IEnumerable<string> Colors(byte[] received, Preparation preparation)
    {
        var (before, after) = (OtherTapeReader.Read(received).Stops, OtherTapeReader.Read(preparation.ProposedTape!).Stops);
        if (after > before)
            yield return string.Create(CultureInfo.InvariantCulture, $"{after} stops instead of {before}");
    }

    private static IEnumerable<string> Penetrations(byte[] received, Preparation preparation)
    {
        var proof = preparation.LossCheck!;
        var before = OtherTapeReader.Read(received).Penetrations;
        var plan = preparation.Order!.Plan;
        var dropped = Dropped(plan).SelectMany(link => Enumerable.Range(link.First, link.Last - link.First + 1)).ToHashSet();
        var ties = plan.Steps.SelectMany(step => step.TieIn.Concat(step.TieOff)).Select(tie => (tie.X, tie.Y));
        var sign = proof.Turned180 ? -1 : 1;
        var wanted = before.Where((_, index) => !dropped.Contains(index)).Concat(ties).Order();
        var written = OtherTapeReader.Read(preparation.ProposedTape!).Penetrations
            .Select(at => ((sign * at.X) + proof.OriginShift.X, (sign * at.Y) + proof.OriginShift.Y)).Order();
        if (!written.SequenceEqual(wanted))
            yield return "needle points are lost or added";
    }

    /// <summary>Links that no step keeps.</summary>
    private static IEnumerable<PlanSpan> Dropped(SewPlan plan)
    {
        var kept = plan.Steps.Where(step => step.Connection == Connection.KeptLink).Select(step => step.Element).ToHashSet();
        return plan.Spans.Where((span, at) => span.Element is null && !kept.Contains(plan.Spans[at + 1].Element!.Value));
    }
}
