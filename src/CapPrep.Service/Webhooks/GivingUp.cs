using CapPrep.Service.Events;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>Ends deliveries that are not attempted any more; they keep their attempts and can be resent.</summary>
internal static class GivingUp
{
    /// <summary>All that one endpoint is owed.</summary>
    public static Task GiveUpOwed(this AppDb db, string endpoint, CancellationToken cancel) =>
        GiveUp(db.Deliveries.Where(row => row.Target == endpoint), cancel);

    /// <summary>
    /// What endpoints are owed that were removed or switched off while it was committed. A test goes out to an
    /// endpoint that is switched off all the same.
    /// </summary>
    public static Task GiveUpOrphans(this AppDb db, CancellationToken cancel) => GiveUp(
        db.Deliveries.Where(row => row.Target.StartsWith(Ids.Webhook)
            && !db.Endpoints.Any(endpoint => endpoint.Id == row.Target
                && (endpoint.State != EndpointState.SwitchedOff
                    || db.Events.Any(happened => happened.Id == row.Event && happened.Type == EventTypes.WebhookTest)))),
        cancel);

    private static Task GiveUp(IQueryable<DeliveryRow> rows, CancellationToken cancel) => rows
        .Where(row => row.State == DeliveryState.Owed)
        .ExecuteUpdateAsync(
            set => set
                .SetProperty(row => row.State, DeliveryState.GivenUp)
                .SetProperty(row => row.NextAt, (DateTimeOffset?)null),
            cancel);
}
