using System.Globalization;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>The written tape penetration by penetration.</summary>
internal static class SewnClauses
{
    internal static ClauseResult Sequence(LossSubject subject)
    {
        var meant = subject.Meant;
        for (var i = 0; i < Math.Min(meant.Count, subject.At.Count); i++)
        {
            if (Difference(subject, i) is { } difference)
                return new(LossClause.Sequence, meant.Count, Fault($"At penetration {i + 1} {difference}."));
        }

        return new(
            LossClause.Sequence,
            meant.Count,
            meant.Count == subject.At.Count ? null : Fault($"{subject.At.Count} penetrations were written, {meant.Count} were due."));
    }

    /// <summary>The needle of the written block holds the thread of the received one.</summary>
    internal static ClauseResult Threads(LossSubject subject)
    {
        var meant = subject.Meant;
        for (var i = 0; i < Math.Min(meant.Count, subject.At.Count); i++)
        {
            if (meant[i].Source is { } source && !IsOwnThread(subject, subject.Written.Block[i], subject.Received.Block[source]))
                return new(LossClause.Threads, meant.Count, Fault($"At penetration {i + 1} the needle plan does not have the thread of received block {subject.Received.Block[source]}."));
        }

        return new(LossClause.Threads, meant.Count, null);
    }

    private static string? Difference(LossSubject subject, int index)
    {
        var (due, written) = (subject.Meant[index], subject.Written);
        if (subject.At[index] != due.At)
            return Fault($"({due.At.X}, {due.At.Y}) was due, ({subject.At[index].X}, {subject.At[index].Y}) was written");
        if (written.Relations[index] != due.Relation)
            return Fault($"{due.Relation} was due, {written.Relations[index]} was written");
        return due.Relation == Relation.Thread && written.Jumps[index] != due.Jumps
            ? Fault($"{due.Jumps} jump records were due, {written.Jumps[index]} were written")
            : null;
    }

    private static bool IsOwnThread(LossSubject subject, int writtenBlock, int receivedBlock)
    {
        if (writtenBlock > subject.Request.NeedlePlan.Count)
            return false;
        var step = subject.Request.NeedlePlan[writtenBlock - 1];
        return subject.ThreadOf(step.Block) == subject.ThreadOf(receivedBlock)
            && step.Needle == subject.Request.NeedleOfBlock[receivedBlock - 1];
    }

    private static string Fault(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
