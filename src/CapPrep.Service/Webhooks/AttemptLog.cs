using CapPrep.Engine.Reading;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Writes down one attempt with what follows from it, in one transaction: the endpoint's health, the attempt's row,
/// the delivery's next step. All of it holds only under the fence of the claim; without it another process has taken
/// the delivery over and writes its own.
/// </summary>
internal sealed class AttemptLog(AppDb db, EndpointHealth health, SwitchOff switchOff, RetrySchedule schedule, Jitter jitter, TimeProvider clock)
{
    private const System.Net.HttpStatusCode Gone = System.Net.HttpStatusCode.Gone;

    public async Task Write(OwedDelivery owed, AttemptReport report, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await NoteHealth(owed, report, now, cancel);
        if (!await TakeBack(owed, cancel))
            return;
        await Settle(owed, report, now, cancel);
        db.Attempts.Add(await Row(owed.Delivery, report, cancel));
        await db.SaveChangesAsync(cancel);
        if (report.Status == Gone && !owed.IsTest)
            await switchOff.Gone(owed.Endpoint!, now, cancel);
        await transaction.CommitAsync(cancel);
        db.ChangeTracker.Clear();
    }

    private Task NoteHealth(OwedDelivery owed, AttemptReport report, DateTimeOffset now, CancellationToken cancel) => owed switch
    {
        { IsTest: true } => Task.CompletedTask,
        _ when report.Outcome == Outcome.Delivered => health.Answered(owed.Delivery.Target, cancel),
        _ => health.Failed(owed.Endpoint!, now, report.RetryAfter, cancel),
    };

    /// <summary>Counts the attempt and gives the claim back; false when another process has the delivery.</summary>
    private async Task<bool> TakeBack(OwedDelivery owed, CancellationToken cancel) => await db.Deliveries
        .Where(row => row.Id == owed.Delivery.Id && row.Fence == owed.Fence)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.Attempts, owed.Delivery.Attempts + 1)
                .SetProperty(row => row.LeaseHolder, (string?)null)
                .SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null),
            cancel) == 1;

    private Task Settle(OwedDelivery owed, AttemptReport report, DateTimeOffset now, CancellationToken cancel)
    {
        var arrived = report.Outcome == Outcome.Delivered;
        var next = arrived || owed.IsTest ? null : schedule.Next(owed.Delivery.Attempts + 1, now, report.RetryAfter, jitter());
        var state = (arrived, next) switch
        {
            (true, _) => DeliveryState.Delivered,
            (_, null) => DeliveryState.GivenUp,
            _ => DeliveryState.Owed,
        };

        // Given up meanwhile, it stays so unless it arrived.
        return db.Deliveries
            .Where(row => row.Id == owed.Delivery.Id && (arrived || row.State == DeliveryState.Owed))
            .ExecuteUpdateAsync(
                set => set.SetProperty(row => row.State, state).SetProperty(row => row.NextAt, next), cancel);
    }

    private async Task<AttemptRow> Row(DeliveryRow delivery, AttemptReport report, CancellationToken cancel)
    {
        var last = await db.Attempts.Where(row => row.Delivery == delivery.Id).MaxAsync(row => (int?)row.Number, cancel);
        return new AttemptRow
        {
            Shop = delivery.Shop,
            Delivery = delivery.Id,
            Number = (last ?? 0) + 1,
            At = report.At,
            Address = report.Address,
            Tls = report.Tls,
            Phases = report.Phases,
            Status = (int?)report.Status,
            Outcome = Words<Outcome>.Standard.Of(report.Outcome),
            Excerpt = report.Excerpt,
        };
    }
}
