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
internal sealed class AttemptLog(AppDb db, EndpointHealth health, RetrySchedule schedule, Jitter jitter, TimeProvider clock)
{
    private const System.Net.HttpStatusCode Gone = System.Net.HttpStatusCode.Gone;

    public async Task Write(OwedDelivery owed, AttemptReport report, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await NoteHealth(owed, report, now, cancel);
        if (!await Settle(owed, report, now, cancel))
            return;
        db.Attempts.Add(await Row(owed.Delivery, report, cancel));
        await db.SaveChangesAsync(cancel);
        if (report.Status == Gone && !owed.IsTest)
            await health.SwitchOff(owed.Delivery.Target, cancel);
        await transaction.CommitAsync(cancel);
        db.ChangeTracker.Clear();
    }

    private Task NoteHealth(OwedDelivery owed, AttemptReport report, DateTimeOffset now, CancellationToken cancel) => owed switch
    {
        { IsTest: true } => Task.CompletedTask,
        _ when report.Outcome == Outcome.Delivered => health.Answered(owed.Delivery.Target, cancel),
        _ => health.Failed(owed.Endpoint!, now, report.RetryAfter, cancel),
    };

    private async Task<bool> Settle(OwedDelivery owed, AttemptReport report, DateTimeOffset now, CancellationToken cancel)
    {
        var made = owed.Delivery.Attempts + 1;
        var arrived = report.Outcome == Outcome.Delivered;
        var next = arrived || owed.IsTest ? null : schedule.Next(made, now, report.RetryAfter, jitter());
        var state = (arrived, next) switch
        {
            (true, _) => DeliveryState.Delivered,
            (_, null) => DeliveryState.GivenUp,
            _ => DeliveryState.Owed,
        };

        // Given up meanwhile, it stays so unless it arrived; a next attempt is only for what is still owed.
        return await db.Deliveries
            .Where(row => row.Id == owed.Delivery.Id && row.Fence == owed.Fence)
            .ExecuteUpdateAsync(
                set =>
                {
                    set.SetProperty(row => row.State, row => arrived || row.State == DeliveryState.Owed ? state : row.State)
                        .SetProperty(row => row.Attempts, made)
                        .SetProperty(row => row.LeaseHolder, (string?)null)
                        .SetProperty(row => row.LeaseUntil, (DateTimeOffset?)null);
                    if (next is { } at)
                        set.SetProperty(row => row.NextAt, row => row.State == DeliveryState.Owed ? at : null);
                    else
                        set.SetProperty(row => row.NextAt, (DateTimeOffset?)null);
                },
                cancel) == 1;
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
