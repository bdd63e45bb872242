using CapPrep.Engine;
using CapPrep.Engine.Approvals;
using CapPrep.Engine.Tapes;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Bench;

/// <summary>Puts beside a request what came before the job: what people had decided, and the job it revises.</summary>
internal sealed class BoundWork(DocumentStore documents, EarlierRevision earlier)
{
    public async Task<PrepareRequest> AddTo(PrepareRequest request, JobRow job, CancellationToken cancel)
    {
        var bound = BoundDecisions.Read(job.Bound);
        return request with
        {
            Acceptances = bound.Acceptances,
            Approval = bound is { Approval: { } approval, Sample: { } sample }
                ? approval with { Sewn = await TapeOf(request, job, sample, cancel) }
                : bound.Approval,
            SewnBefore = bound.IsFresh,
            Earlier = await earlier.Of(job, request.Setup.Machine.Tape.TrimCount, cancel),
        };
    }

    private async Task<ApprovedTape> TapeOf(PrepareRequest request, JobRow job, BoundSample sample, CancellationToken cancel)
    {
        var file = await documents.Find(job.Id, DocumentKinds.TapeApproved, cancel)
            ?? throw new InvalidOperationException($"The approved tape of {job.Id} is gone.");
        var reading = new TapeReading { MaxRecords = int.MaxValue, TrimJumps = request.Setup.Machine.Tape.TrimCount };
        var tape = TapeReader.Read(file.Bytes, reading).Value
            ?? throw new InvalidOperationException($"The approved tape of {job.Id} was written by us and cannot be read.");
        return new ApprovedTape(tape, sample.IsTurned, sample.Start, sample.Order, sample.Blocks);
    }
}
