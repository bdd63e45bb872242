using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Answers a drop whose job has ended: writes the answer whole under a hidden name, renames it, and puts what came in
/// away. Every step can be begun again after a death; <see cref="DropSteps"/> says how.
/// </summary>
internal sealed class AnswerDrop(AppDb db, Drops drops, ReturnDrop giveBack, AnswerFolder answer, TimeProvider clock)
{
    /// <summary>True: it is answered or returned now.</summary>
    public async Task<bool> Run(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(row => row.Id == drop.Job, cancel);
        if (job?.Status == JobStatus.Finished)
            await Give(places, drop, job, cancel);
        else if (drop.Step == DropSteps.AnswerWritten)
            await Erase(places, drop, cancel);
        else if (drop.State == DropState.Taken)
            await Refuse(places, drop, job is null ? DropRefusals.JobErased() : DropRefusals.JobFailed(job.Number, Message(job)), cancel);
        return drop.State is DropState.Answered or DropState.Returned;
    }

    private async Task Give(FolderPlaces places, DropRow drop, JobRow job, CancellationToken cancel)
    {
        var part = Path.Combine(places.Answers, $".{NameOf(drop, job)}.part");
        if (drop.Step is DropSteps.Accepted or DropSteps.Duplicate)
        {
            await answer.Write(part, drop, job, cancel);
            if (!await drops.Step(drop, DropSteps.AnswerWritten, cancel))
                return;
            Checkpoints.Pass(Checkpoints.AnswerWritten);
        }

        if (drop.Step != DropSteps.AnswerWritten)
            return;
        // What is not there any more was renamed, and perhaps fetched, before a death.
        if (Directory.Exists(part))
            Directory.Move(part, Free(places.Answers, drop, job));
        Checkpoints.Pass(Checkpoints.AnswerRenamed);
        Keep(places, drop, job);
        Checkpoints.Pass(Checkpoints.Kept);
        await drops.End(drop, DropState.Answered, DropSteps.Kept, clock.GetUtcNow(), cancel);
    }

    private void Keep(FolderPlaces places, DropRow drop, JobRow job)
    {
        var taken = places.TakenOf(drop.Id);
        if (!Directory.Exists(taken))
            return;
        var day = places.KeptOn(clock.GetUtcNow());
        Directory.CreateDirectory(day);
        Directory.Move(taken, Free(day, drop, job));
    }

    /// <summary>The answer to a pair that came again lies beside the first.</summary>
    private static string NameOf(DropRow drop, JobRow job) => drop.Id == job.DropId
        ? SafeName.Answer(drop.Name, job.Number)
        : SafeName.FurtherAnswer(drop.Name, job.Number, drop.Id);

    /// <summary>A folder kept from another installation may have numbers that this one gives again.</summary>
    private static string Free(string folder, DropRow drop, JobRow job)
    {
        var usual = Path.Combine(folder, NameOf(drop, job));
        return Directory.Exists(usual) ? Path.Combine(folder, SafeName.FurtherAnswer(drop.Name, job.Number, drop.Id)) : usual;
    }

    /// <summary>The job was erased while its answer appeared; what came in must not outlive it.</summary>
    private async Task Erase(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        if (Directory.Exists(places.TakenOf(drop.Id)))
            Directory.Delete(places.TakenOf(drop.Id), recursive: true);
        await drops.End(drop, DropState.Answered, DropSteps.Kept, clock.GetUtcNow(), cancel);
    }

    private async Task Refuse(FolderPlaces places, DropRow drop, Refusal refusal, CancellationToken cancel)
    {
        if (drop.Step != DropSteps.Refused)
        {
            drop.Problem = refusal.Body();
            if (!await drops.Step(drop, DropSteps.Refused, cancel))
                return;
        }

        await giveBack.Run(places, drop, cancel);
    }

    private static string? Message(JobRow job)
    {
        using var failure = job.Failure is null ? null : System.Text.Json.JsonDocument.Parse(job.Failure);
        return failure?.RootElement.GetProperty("message").GetString();
    }
}
