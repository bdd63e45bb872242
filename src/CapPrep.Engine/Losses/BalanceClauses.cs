using System.Globalization;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>
/// What was received, less what the plan drops, plus what it adds, is what was written: as multisets, since real
/// tapes hold many equal penetrations.
/// </summary>
internal static class BalanceClauses
{
    // House: 7 mm, the longest way that may be hidden.
    private const int LongestAdded = 70;

    internal static ClauseResult Penetrations(LossSubject subject)
    {
        var received = Enumerable.Range(0, subject.Received.Count)
            .Where(i => !IsDropped(subject, i))
            .Select(i => new Sewn(subject.Received.At(i), ThreadOfReceived(subject, i)));
        var ties = Steps(subject).SelectMany(step => step.TieIn.Concat(step.TieOff)
            .Select(tie => new Sewn(tie, ThreadOfStep(subject, step))));
        var written = Enumerable.Range(0, subject.At.Count)
            .Select(i => new Sewn(subject.At[i], ThreadOfWritten(subject, i)));
        return subject.IsAsReceived
            ? new(LossClause.Penetrations, subject.Received.Count, null)
            : Balance(LossClause.Penetrations, received.Concat(ties), written);
    }

    internal static ClauseResult Stitches(LossSubject subject)
    {
        var received = Enumerable.Range(1, Math.Max(0, subject.Received.Count - 1))
            .Where(i => subject.Received.Relations[i] == Relation.Thread && !IsCut(subject, i))
            .Select(i => new Sewn(subject.Received.At(i) - subject.Received.At(i - 1), ThreadOfReceived(subject, i)));
        var written = Enumerable.Range(1, Math.Max(0, subject.At.Count - 1))
            .Where(i => subject.Written.Relations[i] == Relation.Thread)
            .Select(i => new Sewn(subject.At[i] - subject.At[i - 1], ThreadOfWritten(subject, i)));
        if (Added(subject).FirstOrDefault(stitch => stitch.At.Reach > LongestAdded) is { Thread: > 0 } far)
            return new(LossClause.Stitches, subject.Received.Count, FormattableString.Invariant($"A new stitch of ({far.At.X}, {far.At.Y}) is too long."));
        return subject.IsAsReceived
            ? new(LossClause.Stitches, subject.Received.Relations.Count(Relation.Thread), null)
            : Balance(LossClause.Stitches, received.Concat(Added(subject)), written);
    }

    private static IEnumerable<Sewn> Added(LossSubject subject)
    {
        var steps = Steps(subject);
        for (var at = 0; at < steps.Count; at++)
        {
            var (step, thread) = (steps[at], ThreadOfStep(subject, steps[at]));
            if (SpanOf(subject, step) is not { } span)
                continue;
            var ways = step.TieIn.Append(subject.Received.At(span.First)).Zip(step.TieIn.Skip(1).Append(subject.Received.At(span.First)))
                .Take(step.TieIn.Count)
                .Concat(step.TieOff.Prepend(subject.Received.At(span.Last)).Zip(step.TieOff));
            foreach (var (from, to) in ways)
                yield return new(to - from, thread);
            if (step.Connection == Connection.NewLink && at > 0 && SpanOf(subject, steps[at - 1]) is { } before)
                yield return new(subject.Received.At(span.First) - subject.Received.At(before.Last), thread);
        }
    }

    /// <summary>The penetration lies in a link that is cut.</summary>
    private static bool IsDropped(LossSubject subject, int index) => subject.CutLinks.Any(link => index >= link.First && index <= link.Last);

    /// <summary>The stitch to the penetration belongs to a link that is cut.</summary>
    private static bool IsCut(LossSubject subject, int index) => subject.CutLinks.Any(link => index >= link.First && index <= link.Last + 1);

    private static IReadOnlyList<PlanStep> Steps(LossSubject subject) => subject.Request.Plan?.Steps ?? [];

    private static PlanSpan? SpanOf(LossSubject subject, PlanStep step) =>
        subject.Meant.PlaceOf(step.Element) is { } place ? subject.Request.Plan!.Spans[place] : null;

    private static int ThreadOfReceived(LossSubject subject, int index) => subject.ThreadOf(subject.Received.Block[index]);

    private static int ThreadOfStep(LossSubject subject, PlanStep step) =>
        SpanOf(subject, step) is { } span ? ThreadOfReceived(subject, span.First) : 0;

    private static int ThreadOfWritten(LossSubject subject, int index) =>
        subject.ReceivedBlockOf(subject.Written.Block[index]) is { } block ? subject.ThreadOf(block) : 0;

    private static ClauseResult Balance(LossClause clause, IEnumerable<Sewn> due, IEnumerable<Sewn> written)
    {
        Sewn[] wanted = [.. InOrder(due)];
        Sewn[] found = [.. InOrder(written)];
        for (var i = 0; i < Math.Min(wanted.Length, found.Length); i++)
        {
            if (wanted[i] != found[i])
                return new(clause, wanted.Length, FormattableString.Invariant($"({wanted[i].At.X}, {wanted[i].At.Y}) of thread {wanted[i].Thread} was due, ({found[i].At.X}, {found[i].At.Y}) of thread {found[i].Thread} was found."));
        }

        return new(clause, wanted.Length, wanted.Length == found.Length ? null : string.Create(CultureInfo.InvariantCulture, $"{wanted.Length} were due, {found.Length} were found."));
    }

    private static IEnumerable<Sewn> InOrder(IEnumerable<Sewn> all) =>
        all.OrderBy(one => one.Thread).ThenBy(one => one.At.X).ThenBy(one => one.At.Y);

    private readonly record struct Sewn(TapePoint At, int Thread);
}
