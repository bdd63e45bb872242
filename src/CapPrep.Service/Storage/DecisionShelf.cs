using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>What a decision is bound to: these stitches on this cap.</summary>
/// <param name="StitchesSha">Of the received tape.</param>
/// <param name="CapStyle">Empty when the ticket's article number is of no style.</param>
internal sealed record Binding(string Shop, string StitchesSha, string CapStyle, string Location, string Technique)
{
    public static Binding Of(JobRow job) => new(job.Shop, job.StitchesSha, job.CapStyle ?? "", job.Location, job.Technique);
}

/// <summary>What people have decided, as far as it is in force.</summary>
internal sealed class DecisionShelf(AppDb db)
{
    /// <summary>Points that were accepted of these very stitches.</summary>
    public IQueryable<DecisionRow> Accepted(Binding binding) => OnThisCap(binding)
        .Where(row => row.Decision == DecisionWord.Accept && row.ReceivedStitchesSha == binding.StitchesSha);

    /// <summary>
    /// Approvals of a sewn sample, where the tape received then, or the one sewn then, has these stitches.
    /// </summary>
    public IQueryable<DecisionRow> Approved(Binding binding) => OnThisCap(binding)
        .Where(row => row.Decision == DecisionWord.ApproveSample
            && (row.ReceivedStitchesSha == binding.StitchesSha || row.SewnStitchesSha == binding.StitchesSha));

    /// <summary>Approvals of a sample of the tape received then, not of the one sewn then.</summary>
    public IQueryable<DecisionRow> ApprovedAsReceived(Binding binding) =>
        Approved(binding).Where(row => row.ReceivedStitchesSha == binding.StitchesSha);

    /// <summary>Every point said of a job, in force or not, oldest first.</summary>
    public Task<DecisionRow[]> Of(string job, CancellationToken cancel) => db.Decisions.AsNoTracking()
        .Where(row => row.Job == job)
        .OrderBy(row => row.At).ThenBy(row => row.Id)
        .ToArrayAsync(cancel);

    /// <summary>Ends them, in the caller's transaction; gives their number.</summary>
    public static Task<int> End(IQueryable<DecisionRow> rows, DateTimeOffset now, CancellationToken cancel) =>
        rows.ExecuteUpdateAsync(set => set.SetProperty(row => row.Ended, now), cancel);

    private IQueryable<DecisionRow> OnThisCap(Binding binding) => db.Decisions.Where(row =>
        row.Shop == binding.Shop && row.Ended == null
        && row.CapStyle == binding.CapStyle && row.Location == binding.Location && row.Technique == binding.Technique);
}
