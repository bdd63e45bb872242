using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Engine.Losses;

/// <summary>
/// Proves that a written tape sews everything that was received and nothing else, with the same threads in the same
/// layers. It reads both tapes for itself and knows nothing of how the order was found.
/// </summary>
public static class LossCheck
{
    /// <summary>All ten clauses, each judged whatever the others say.</summary>
    /// <exception cref="EngineFaultException">The written file is no tape.</exception>
    public static LossCheckResult Of(LossCheckRequest request)
    {
        var subject = new LossSubject(request);
        var plan = request.Plan;
        return new()
        {
            Clauses =
            [
                SpanClauses.Partition(subject),
                SewnClauses.Sequence(subject),
                SewnClauses.Threads(subject),
                BalanceClauses.Penetrations(subject),
                BalanceClauses.Stitches(subject),
                TieClause.Check(subject),
                TopView.Check(subject),
                SpanClauses.MustFollow(subject),
                CountClause.Check(subject),
                MachineClause.Check(subject),
            ],
            TiesAdded = plan?.TiesAdded ?? 0,
            Dropped = subject.CutLinks.Sum(link => link.Last - link.First + 1),
            NewLinks = plan?.Steps.Count(step => step.Connection == Connection.NewLink) ?? 0,
            OriginShift = request.Settings.StartAndEnd ?? TapePoint.Origin,
            Turned180 = request.Settings.Turn180,
        };
    }
}
