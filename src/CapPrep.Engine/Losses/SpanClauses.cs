using System.Globalization;
using CapPrep.Engine.Sequence.Writing;

namespace CapPrep.Engine.Losses;

/// <summary>What the plan itself must keep.</summary>
internal static class SpanClauses
{
    internal static ClauseResult Partition(LossSubject subject)
    {
        if (subject.Request.Plan is not { } plan)
            return new(LossClause.Partition, 1, null);
        return new(LossClause.Partition, plan.Spans.Count, Gap(plan.Spans, subject.Received.Count) ?? Missing(plan));
    }

    /// <summary>Every pair keeps its order; without a plan no order has changed.</summary>
    internal static ClauseResult MustFollow(LossSubject subject)
    {
        if (subject.Request.Plan is not { } plan)
            return new(LossClause.MustFollow, 0, null);
        var place = new Dictionary<int, int>();
        for (var at = 0; at < plan.Steps.Count; at++)
            place.TryAdd(plan.Steps[at].Element, at);
        foreach (var (before, after) in plan.MustFollow)
        {
            if (place.TryGetValue(before, out var one) && place.TryGetValue(after, out var other) && one > other)
                return new(LossClause.MustFollow, plan.MustFollow.Count, Fault($"Element {after + 1} is sewn before element {before + 1}."));
        }

        return new(LossClause.MustFollow, plan.MustFollow.Count, null);
    }

    private static string? Gap(IReadOnlyList<PlanSpan> spans, int penetrations)
    {
        var next = 0;
        foreach (var span in spans)
        {
            if (span.First != next || span.Last < span.First - 1)
                return Fault($"The span from penetration {span.First + 1} to {span.Last + 1} stands where penetration {next + 1} is due.");
            next = span.Last + 1;
        }

        return next == penetrations ? null : Fault($"The spans end at penetration {next} of {penetrations}.");
    }

    private static string? Missing(SewPlan plan)
    {
        int[] spans = [.. plan.Spans.Select(span => span.Element).OfType<int>().Order()];
        int[] steps = [.. plan.Steps.Select(step => step.Element).Order()];
        return spans.SequenceEqual(steps) ? null : "The steps are not every element once.";
    }

    private static string Fault(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
