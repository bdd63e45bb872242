using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// How far a drop has come. A step is written after its deed, or before it where the deed cannot be seen afterwards.
/// What a restart does, step by step:
/// <list type="number">
/// <item>noted: the row was there before the first rename. Nothing in taken/DROPID: the row goes, the files are looked
/// at anew. Something there: what is still missing is renamed.</item>
/// <item>tapeTaken: the tape, or the archive, is in taken/DROPID, and with it the drop is ours. The ticket follows.</item>
/// <item>ticketTaken: everything is there. It is read and handed in under the drop's id; a job that was made before the
/// death is found by that id.</item>
/// <item>accepted: the job's end owes a delivery to the drop, and the delivery brings the answer.</item>
/// <item>duplicate: the same pair came before; its job's end is looked for at every round.</item>
/// <item>answerWritten: the answer is whole under its hidden name. It is renamed, unless that was done; an answer that
/// is gone by now was renamed and fetched, so it is never written twice.</item>
/// <item>kept: answered, the files lie in kept. The end.</item>
/// <item>refused: the problem stands in the row. taken/DROPID gets the reasons and is renamed, unless that was done.</item>
/// <item>returned: told. The end.</item>
/// </list>
/// </summary>
internal static class DropSteps
{
    public const string Noted = "noted";
    public const string TapeTaken = "tapeTaken";
    public const string TicketTaken = "ticketTaken";
    public const string Accepted = "accepted";
    public const string Duplicate = "duplicate";
    public const string AnswerWritten = "answerWritten";
    public const string Kept = "kept";
    public const string Refused = "refused";
    public const string Returned = "returned";

    /// <summary>Steps from which the keeper itself goes on.</summary>
    public static readonly string[] Open = [Noted, TapeTaken, TicketTaken, Refused];
}

/// <summary>A file of a drop.</summary>
internal sealed record DroppedFile(string Name, long Bytes);

/// <summary>
/// The rows of drops. A row goes from step to step only if it stands where the caller thinks; if not, another process
/// has gone on with it and the caller stops.
/// </summary>
internal sealed class Drops(AppDb db)
{
    public async Task Note(DropRow row, CancellationToken cancel)
    {
        db.Drops.Add(row);
        await db.SaveChangesAsync(cancel);
        db.ChangeTracker.Clear();
    }

    public Task<DropRow?> Find(string id, CancellationToken cancel) =>
        db.Drops.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel);

    /// <summary>Nothing was renamed yet, so nothing has happened.</summary>
    public Task Forget(string id, CancellationToken cancel) =>
        db.Drops.Where(row => row.Id == id && row.Step == DropSteps.Noted).ExecuteDeleteAsync(cancel);

    /// <summary>Drops that the keeper has to go on with, oldest first.</summary>
    public Task<DropRow[]> Open(string root, CancellationToken cancel) => Of(root)
        .Where(row => DropSteps.Open.Contains(row.Step))
        .OrderBy(row => row.Id)
        .ToArrayAsync(cancel);

    /// <summary>
    /// Drops to whose answer no delivery leads: their pair came twice and the job has ended, or the job was erased.
    /// Oldest first.
    /// </summary>
    public Task<DropRow[]> WithoutDelivery(string root, int limit, CancellationToken cancel) => Of(root)
        .Where(row => row.Step == DropSteps.Accepted || row.Step == DropSteps.Duplicate || row.Step == DropSteps.AnswerWritten)
        .Where(row => !db.Jobs.Any(job => job.Id == row.Job && (job.DropId == row.Id || job.Status == JobStatus.Queued || job.Status == JobStatus.Working)))
        .OrderBy(row => row.Id)
        .Take(limit)
        .ToArrayAsync(cancel);

    /// <summary>
    /// The youngest job that was made of the same tape and ticket and did not fail. One that a person has decided on
    /// since does not count: its answer is an old one.
    /// </summary>
    /// <param name="since">Jobs received before are too old.</param>
    public Task<string?> EarlierJob(DropRow drop, DateTimeOffset since, CancellationToken cancel) => db.Drops
        .Where(row => row.TapeSha == drop.TapeSha && row.TicketSha == drop.TicketSha && row.Id != drop.Id)
        .Join(db.Jobs, row => row.Id, job => job.DropId, (_, job) => job)
        .Where(job => job.Received > since && job.Status != JobStatus.Failed && !db.Decisions.Any(decision => decision.Job == job.Id))
        .OrderByDescending(job => job.Received).ThenBy(job => job.Id)
        .Select(job => (string?)job.Id)
        .FirstOrDefaultAsync(cancel);

    /// <summary>False: the drop is no longer where the caller thought.</summary>
    public async Task<bool> Step(DropRow drop, string to, CancellationToken cancel)
    {
        var from = drop.Step;
        drop.Step = to;
        if (drop.State == DropState.Waiting)
            drop.State = DropState.Taken;
        return await db.Drops.Where(row => row.Id == drop.Id && row.Step == from).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.Step, drop.Step)
                .SetProperty(row => row.State, drop.State)
                .SetProperty(row => row.Job, drop.Job)
                .SetProperty(row => row.TapeSha, drop.TapeSha)
                .SetProperty(row => row.TicketSha, drop.TicketSha)
                .SetProperty(row => row.Tries, drop.Tries)
                .SetProperty(row => row.Problem, drop.Problem),
            cancel) == 1;
    }

    /// <summary>The last step of a drop, in the caller's transaction. False: another process was first.</summary>
    public async Task<bool> End(DropRow drop, DropState state, string step, DateTimeOffset now, CancellationToken cancel)
    {
        (drop.State, drop.Step, drop.Ended) = (state, step, now);
        return await db.Drops.Where(row => row.Id == drop.Id && row.State != DropState.Answered && row.State != DropState.Returned)
            .ExecuteUpdateAsync(
                set => set.SetProperty(row => row.State, state).SetProperty(row => row.Step, step).SetProperty(row => row.Ended, now),
                cancel) == 1;
    }

    public static byte[] Written(IEnumerable<DroppedFile> files) => Json.Bytes(writer =>
    {
        writer.WriteStartArray();
        foreach (var file in files)
        {
            writer.WriteStartObject();
            writer.WriteString("name", file.Name);
            writer.WriteNumber("bytes", file.Bytes);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    });

    public static IReadOnlyList<DroppedFile> Read(DropRow row)
    {
        using var json = JsonDocument.Parse(row.Files);
        return [.. json.RootElement.EnumerateArray().Select(file => new DroppedFile(file.GetProperty("name").GetString()!, file.GetProperty("bytes").GetInt64()))];
    }

    private IQueryable<DropRow> Of(string root) => db.Drops.AsNoTracking()
        .Where(row => row.Root == root && (row.State == DropState.Waiting || row.State == DropState.Taken));
}
