using System.Diagnostics;
using CapPrep.Engine.Reading;
using CapPrep.Service.Intake;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Takes a drop in: note, rename, read, hand in. Every step can be begun again after a death; <see cref="DropSteps"/>
/// says how.
/// </summary>
internal sealed class TakeDrop(
    Drops drops, ReturnDrop giveBack, DropContents contents, IntakeDesk desk, ShopScope scope, TimeProvider clock)
{
    private const int MostTries = 5;

    /// <summary>Within this time the same pair is answered from the job it made before.</summary>
    private static readonly TimeSpan SameAgain = TimeSpan.FromHours(24);

    /// <summary>Takes files that settled. False: no room for more jobs now.</summary>
    /// <param name="id">Of the new drop.</param>
    public async Task<bool> Take(FolderPlaces places, Parcel parcel, string id, CancellationToken cancel)
    {
        var drop = new DropRow
        {
            Shop = scope.Required,
            Id = id,
            Root = places.Root,
            Name = parcel.Name,
            State = DropState.Waiting,
            Step = DropSteps.Noted,
            Seen = clock.GetUtcNow(),
            Files = Drops.Written(parcel.Files.Select(file => new DroppedFile(file.Name, file.Length))),
            Problem = parcel.Refusal?.Body(),
        };
        await drops.Note(drop, cancel);
        Checkpoints.Pass(Checkpoints.DropNoted);
        return await GoOn(places, drop, cancel);
    }

    /// <summary>Goes on with a drop from the step at which it stands. False: no room for more jobs now.</summary>
    public async Task<bool> GoOn(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        if (drop.Step is DropSteps.Noted or DropSteps.TapeTaken && !await TakeFiles(places, drop, cancel))
            return true;
        if (drop.Step == DropSteps.TicketTaken && !await HandIn(places, drop, cancel))
            return false;
        if (drop.Step == DropSteps.Refused)
            await giveBack.Run(places, drop, cancel);
        return true;
    }

    /// <summary>Renames what is not yet renamed, the tape first. False: there is nothing to go on with.</summary>
    private async Task<bool> TakeFiles(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        var folder = places.TakenOf(drop.Id);
        string[] names = [.. Drops.Read(drop).Select(file => file.Name)];
        if (drop.Step == DropSteps.Noted
            && !(await Claim(places.Drop, folder, names[0], drop, cancel) && await drops.Step(drop, DropSteps.TapeTaken, cancel)))
        {
            return false;
        }

        Checkpoints.Pass(Checkpoints.TapeTaken);
        foreach (var name in names.Where(name => !Moved(places.Drop, folder, name)))
            drop.Problem ??= DropRefusals.Gone(name).Body();
        var isRefused = drop.Problem is not null;
        if (!await drops.Step(drop, isRefused ? DropSteps.Refused : DropSteps.TicketTaken, cancel))
            return false;
        Checkpoints.Pass(Checkpoints.TicketTaken);
        return true;
    }

    /// <summary>The first rename. If it cannot be made nothing has happened, and the row goes again.</summary>
    private async Task<bool> Claim(string from, string to, string name, DropRow drop, CancellationToken cancel)
    {
        var isMoved = false;
        try
        {
            Directory.CreateDirectory(to);
            isMoved = Moved(from, to, name);
        }
        finally
        {
            if (!isMoved)
                await drops.Forget(drop.Id, cancel);
        }

        if (!isMoved)
            Directory.Delete(to);
        return isMoved;
    }

    /// <summary>True: the file lies in the drop's folder, now or since before.</summary>
    private static bool Moved(string from, string to, string name)
    {
        var target = Path.Combine(to, name);
        if (File.Exists(target))
            return true;
        try
        {
            File.Move(Path.Combine(from, name), target);
            return true;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }

    /// <summary>
    /// Reads the pair and makes a job of it, or the reason why not. The try is counted before anything is read, so that
    /// a drop that kills the process is not tried for ever. False: no room for more jobs now.
    /// </summary>
    private async Task<bool> HandIn(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        drop.Tries++;
        if (drop.Tries > MostTries)
            return await Refuse(drop, DropRefusals.OurFault(drop.Id), cancel);
        if (!await drops.Step(drop, DropSteps.TicketTaken, cancel))
            return true;
        var (pair, unreadable) = contents.Read(places.TakenOf(drop.Id), [.. Drops.Read(drop).Select(file => file.Name)]);
        if (pair is null)
            return await Refuse(drop, unreadable!, cancel);

        (drop.TapeSha, drop.TicketSha) = (DocumentStore.Sha(pair.Tape), DocumentStore.Sha(pair.Ticket));
        drop.Job = await drops.EarlierJob(drop, clock.GetUtcNow() - SameAgain, cancel);
        if (drop.Job is null)
            return await Accept(drop, pair, cancel);
        await drops.Step(drop, DropSteps.Duplicate, cancel);
        return true;
    }

    private async Task<bool> Accept(DropRow drop, Contents pair, CancellationToken cancel)
    {
        using var trace = new Activity("drop").Start();
        var acceptance = await desk.Accept(Submission(drop, pair), cancel);
        if (acceptance.Refusal?.Problem == Problems.Overloaded)
        {
            drop.Tries--;
            await drops.Step(drop, DropSteps.TicketTaken, cancel);
            return false;
        }

        if (acceptance.Refusal is { } refusal)
            return await Refuse(drop, refusal, cancel);
        drop.Job = acceptance.JobId;
        await drops.Step(drop, DropSteps.Accepted, cancel);
        return true;
    }

    /// <summary>The drop's id is the key under which a second try finds the job of the first.</summary>
    private Submission Submission(DropRow drop, Contents pair) => new()
    {
        JobId = Ids.New(Ids.Job, clock),
        Door = Door.Folder,
        Ticket = pair.Ticket,
        Tape = pair.Tape,
        FileName = FileName.Cleaned(pair.TapeName),
        IdempotencyKey = drop.Id,
        Route = Words<Door>.Standard.Of(Door.Folder),
        DropId = drop.Id,
    };

    private async Task<bool> Refuse(DropRow drop, Refusal refusal, CancellationToken cancel)
    {
        drop.Problem = refusal.Body();
        await drops.Step(drop, DropSteps.Refused, cancel);
        return true;
    }
}
