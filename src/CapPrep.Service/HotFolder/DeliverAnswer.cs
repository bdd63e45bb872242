using CapPrep.Service.Events;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Brings the end of a job to the hot folder it came from. Only the process that keeps the folder does it: another
/// one may not even see it. What cannot be written is tried again for as long as it takes.
/// </summary>
internal sealed partial class DeliverAnswer(
    AppDb db, ShopScope scope, Drops drops, AnswerDrop answer, KeptRoots kept, Me me, TimeProvider clock, ILogger<DeliverAnswer> log)
    : ITargetDeliverer
{
    private static readonly TimeSpan Lease = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan TriedAgainAfter = TimeSpan.FromSeconds(10);

    public string TargetPrefix => Ids.Drop;

    /// <summary>What is owed to the drops of a folder and due, oldest first.</summary>
    public static IQueryable<DeliveryRow> Owed(AppDb db, string root, DateTimeOffset now) => db.Drops
        .Where(drop => drop.Root == root && drop.State == DropState.Taken)
        .Join(db.Deliveries, drop => drop.Id, delivery => delivery.Target, (_, delivery) => delivery)
        .Where(row => row.State == DeliveryState.Owed && row.NextAt <= now && (row.LeaseUntil == null || row.LeaseUntil < now))
        .OrderBy(row => row.NextAt).ThenBy(row => row.Id);

    /// <summary>
    /// Whoever keeps the folder from now on need not wait for what the keeper before had in hand when it ended.
    /// </summary>
    public static Task<int> FreeLeases(AppDb db, string root, string me, CancellationToken cancel) => db.Deliveries
        .Where(row => row.State == DeliveryState.Owed && row.LeaseUntil != null && row.LeaseHolder != me
            && db.Drops.Any(drop => drop.Id == row.Target && drop.Root == root && drop.State == DropState.Taken))
        .ExecuteUpdateAsync(set => set.SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null), cancel);

    public Task Deliver(string deliveryId, CancellationToken cancel) => Bring(deliveryId, cancel);

    /// <summary>True: it was brought.</summary>
    public async Task<bool> Bring(string deliveryId, CancellationToken cancel)
    {
        var drop = await db.Deliveries.Where(row => row.Id == deliveryId)
            .Join(db.Drops, delivery => delivery.Target, drop => drop.Id, (_, drop) => drop)
            .AsNoTracking()
            .SingleOrDefaultAsync(cancel);
        if (drop is null || !kept.Has(drop.Root) || await db.ClaimDelivery(deliveryId, me.Name, clock.GetUtcNow(), Lease, cancel) is not { } claim)
            return false;
        scope.Shop = claim.Shop;
        try
        {
            // Before the claim somebody else may have gone on with it.
            var isOver = await answer.Run(new FolderPlaces(drop.Root), (await drops.Find(drop.Id, cancel))!, cancel);
            await Record(claim, isOver, CancellationToken.None);
            kept.Note(drop.Root, null);
            return isOver;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            NotWritten(log, fault, drop.Id);
            await Record(claim, isOver: false, CancellationToken.None);
            kept.Note(drop.Root, $"An answer cannot be written; it is tried again. {fault.Message}");
            return false;
        }
    }

    private Task Record(Claim claim, bool isOver, CancellationToken cancel)
    {
        var next = isOver ? (DateTimeOffset?)null : clock.GetUtcNow() + TriedAgainAfter;
        return db.Deliveries.Where(row => row.Id == claim.Id && row.Fence == claim.Fence).ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, isOver ? DeliveryState.Delivered : DeliveryState.Owed)
                .SetProperty(row => row.Attempts, row => row.Attempts + 1)
                .SetProperty(row => row.NextAt, next)
                .SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null),
            cancel);
    }

    [LoggerMessage(1, LogLevel.Warning, "The answer to drop {Drop} cannot be written; it is tried again")]
    private static partial void NotWritten(ILogger log, Exception fault, string drop);
}
