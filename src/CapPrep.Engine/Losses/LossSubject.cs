using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>Both tapes as read, the written one brought back to the frame of the received one.</summary>
internal sealed class LossSubject
{
    internal LossSubject(LossCheckRequest request)
    {
        Request = request;
        Received = StitchSequence.Of(request.Received, request.Settings.TrimJumps);
        WrittenTape = Read(request);
        Written = StitchSequence.Of(WrittenTape, request.Settings.TrimJumps);
        At = [.. Enumerable.Range(0, Written.Count).Select(i => Back(Written.At(i)))];
        Meant = Meant.By(request.Plan, Received, request.Settings.MaxMove);
        CutLinks = request.Plan is { } plan ? [.. CutLinksOf(plan)] : [];
    }

    internal LossCheckRequest Request { get; }

    internal StitchSequence Received { get; }

    internal Tape WrittenTape { get; }

    internal StitchSequence Written { get; }

    /// <summary>Penetrations of the written tape, in units of the received one.</summary>
    internal IReadOnlyList<TapePoint> At { get; }

    /// <summary>What should have been written.</summary>
    internal Meant Meant { get; }

    /// <summary>Spans of the plan that are sewn no more.</summary>
    internal IReadOnlyList<PlanSpan> CutLinks { get; }

    /// <summary>Without a plan: the written penetrations are the received ones, one by one, in blocks that change where theirs do.</summary>
    internal bool IsAsReceived => Request.Plan is null
        && SewnClauses.Sequence(this).Passed && Written.Block.SequenceEqual(Received.Block);

    internal int ThreadOf(int receivedBlock) => Request.ThreadOfBlock?[receivedBlock - 1] ?? receivedBlock;

    /// <summary>The received block that a written one sews, as the needle plan says; null when it says nothing.</summary>
    internal int? ReceivedBlockOf(int writtenBlock) =>
        writtenBlock <= Request.NeedlePlan.Count ? Request.NeedlePlan[writtenBlock - 1].Block : null;

    /// <summary>A place of the written tape in units of the received one.</summary>
    internal TapePoint Back(TapePoint written) =>
        (Request.Settings.Turn180 ? written.Turned() : written) + (Request.Settings.StartAndEnd ?? TapePoint.Origin);

    private IEnumerable<PlanSpan> CutLinksOf(SewPlan plan)
    {
        var kept = plan.Steps
            .Where(step => step.Connection == Connection.KeptLink)
            .Select(step => Meant.PlaceOf(step.Element) is { } place ? Meant.LinkTo(plan.Spans[place]) : null)
            .OfType<int>()
            .ToHashSet();
        return plan.Spans.Where((span, place) => span.Element is null && !kept.Contains(place));
    }

    private static Tape Read(LossCheckRequest request)
    {
        var read = TapeReader.Read(request.Written, new() { TrimJumps = request.Settings.TrimJumps, MaxRecords = int.MaxValue });
        return read.Succeeded
            ? read.Value
            : throw new EngineFaultException($"The written tape cannot be read: {read.Violations[0].Message}");
    }
}
