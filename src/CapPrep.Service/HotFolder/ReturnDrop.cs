using System.Text;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Gives a drop back with the reason: the two files that say it are put beside what came in, one rename makes all of
/// it appear in returned, and then the event is written.
/// </summary>
internal sealed class ReturnDrop(
    AppDb db, Drops drops, EventLog events, IHandover handover, Waiters waiters, Settings settings, TimeProvider clock)
{
    private const string ForPrograms = "reason.json";
    private const string ForPeople = "reason.txt";

    /// <param name="drop">With its problem, at the step refused.</param>
    public async Task Run(FolderPlaces places, DropRow drop, CancellationToken cancel)
    {
        var (from, to) = (places.TakenOf(drop.Id), Target(places, drop));
        if (Directory.Exists(from))
        {
            await WriteReasons(from, drop, cancel);
            Directory.Move(from, to);
        }

        await Tell(places, drop, to, cancel);
    }

    /// <summary>Two names may be cut to one in the same millisecond; then the second gets its id in full.</summary>
    private static string Target(FolderPlaces places, DropRow drop)
    {
        var usual = Path.Combine(places.Returned, SafeName.Returned(drop.Name, drop.Id));
        var full = Path.Combine(places.Returned, SafeName.ReturnedInFull(drop.Name, drop.Id));
        var isTaken = Directory.Exists(usual) && Directory.Exists(places.TakenOf(drop.Id));
        return isTaken || Directory.Exists(full) ? full : usual;
    }

    private async Task WriteReasons(string folder, DropRow drop, CancellationToken cancel)
    {
        StepAside(folder, ForPrograms);
        StepAside(folder, ForPeople);
        await DurableFile.Write(Path.Combine(folder, ForPrograms), drop.Problem!, cancel);
        await DurableFile.Write(Path.Combine(folder, ForPeople), Encoding.UTF8.GetBytes(ReasonText.Of(drop, clock.GetUtcNow())), cancel);

        // What came in may go by our own names. After a death in between ours lie there already, and are written anew.
        void StepAside(string path, string name)
        {
            var theirs = Drops.Read(drop).FirstOrDefault(file => file.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
            if (theirs is null || !File.Exists(Path.Combine(path, theirs.Name)) || File.Exists(Path.Combine(path, "received-" + theirs.Name)))
                return;
            File.Move(Path.Combine(path, theirs.Name), Path.Combine(path, "received-" + theirs.Name));
        }
    }

    private async Task Tell(FolderPlaces places, DropRow drop, string folder, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        var order = TicketGlance.OrderNumber(folder, drop, settings.Uploads.MaxTicketBytes);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (!await drops.End(drop, DropState.Returned, DropSteps.Returned, now, cancel))
            return;
        var position = await db.Next(drop.Shop, Counters.Position, cancel);
        var data = DropJson.Returned(drop, places.Name, Path.GetRelativePath(places.Root, folder).Replace('\\', '/'), order);
        var due = await events.Append(new NewEvent(drop.Shop, EventTypes.DropReturned, position, now, data), cancel);
        await transaction.CommitAsync(cancel);
        waiters.Release(drop.Shop);
        foreach (var delivery in due)
            handover.Deliver(delivery);
    }
}
