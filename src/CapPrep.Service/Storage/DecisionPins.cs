using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>
/// Finds what counts for a job that is being accepted, and writes it down with the job: whatever is decided later, the
/// same job gives the same result.
/// </summary>
internal sealed class DecisionPins(AppDb db, DocumentStore documents, DecisionShelf shelf)
{
    // An approval is fresh for so long.
    private const int FreshMonths = 12;

    private const int MostShown = 50;

    /// <summary>Sets inputs and bound decisions of the row, in the caller's transaction.</summary>
    /// <param name="tapeExpires">Until when an approved tape is kept with the job.</param>
    public async Task Pin(JobRow job, JobInputs inputs, DateTimeOffset tapeExpires, CancellationToken cancel)
    {
        var binding = Binding.Of(job);
        var earlier = await Earlier(job, cancel);
        var accepted = await shelf.Accepted(binding).AsNoTracking()
            .Where(row => !row.OneJob || row.Job == earlier)
            .OrderBy(row => row.At).ThenBy(row => row.Id)
            .ToArrayAsync(cancel);
        var approvals = await shelf.Approved(binding).AsNoTracking()
            .OrderByDescending(row => row.At).ThenByDescending(row => row.Id)
            .ToArrayAsync(cancel);
        var approval = await Followed(job, approvals, tapeExpires, cancel);
        var isFresh = approvals.Any(row => row.Machine == inputs.Machine.Id && row.At >= job.Received.AddMonths(-FreshMonths));
        if (accepted.Length > 0 || approval is not null)
            job.Bound = BoundDecisions.Bytes(accepted, approval, isFresh, binding.StitchesSha);
        job.Inputs = (inputs with { Earlier = earlier, Decisions = Shown(accepted, approval) }).Bytes();
    }

    /// <summary>The newest finished job of the line: what a person has looked at.</summary>
    private Task<string?> Earlier(JobRow job, CancellationToken cancel) => db.Jobs.AsNoTracking()
        .Where(row => row.Shop == job.Shop && row.OrderNumber == job.OrderNumber && row.Line == job.Line && row.Location == job.Location
            && row.Status == JobStatus.Finished)
        .OrderByDescending(row => row.Revision)
        .Select(row => (string?)row.Id)
        .FirstOrDefaultAsync(cancel);

    /// <summary>The newest whose tape is there, where it needs one.</summary>
    private async Task<DecisionRow?> Followed(JobRow job, DecisionRow[] approvals, DateTimeOffset tapeExpires, CancellationToken cancel)
    {
        foreach (var approval in approvals)
        {
            if (!BoundDecisions.NeedsTape(approval, job.StitchesSha)
                || await documents.Share(job.Shop, approval.Said, job.Id, DocumentKinds.TapeApproved, tapeExpires, cancel))
                return approval;
        }

        return null;
    }

    private static IReadOnlyList<string> Shown(DecisionRow[] accepted, DecisionRow? approval) =>
    [
        .. (approval is null ? accepted : accepted.Append(approval))
            .OrderBy(row => row.At).ThenBy(row => row.Id, StringComparer.Ordinal)
            .Select(row => row.Said)
            .Distinct()
            .TakeLast(MostShown),
    ];
}
