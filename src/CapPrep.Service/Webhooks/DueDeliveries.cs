using CapPrep.Service.Events;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>Which deliveries could go out now.</summary>
internal static class DueDeliveries
{
    /// <summary>
    /// Due deliveries of one endpoint that nobody has. Those tried least come first: what a receiver cannot take must
    /// not stand before what it can.
    /// </summary>
    public static IQueryable<DeliveryRow> Of(AppDb db, string target, DateTimeOffset now) => All(db, now)
        .Where(row => row.Target == target)
        .OrderBy(row => row.Attempts)
        .ThenBy(row => row.NextAt)
        .ThenBy(row => row.Id);

    /// <summary>Endpoints that may be called now and have something due; paused ones last, where a call is a probe.</summary>
    public static IQueryable<EndpointRow> Endpoints(AppDb db, DateTimeOffset now)
    {
        var due = All(db, now);
        return db.Endpoints
            .Where(endpoint => endpoint.State == EndpointState.On
                || (endpoint.State == EndpointState.Paused && endpoint.PausedUntil <= now))
            .Where(endpoint => due.Any(row => row.Target == endpoint.Id))
            .OrderByDescending(endpoint => endpoint.State == EndpointState.On)
            .ThenBy(endpoint => endpoint.Id);
    }

    /// <summary>Due test events, which go out whatever the state of their endpoint.</summary>
    public static IQueryable<DeliveryRow> Tests(AppDb db, DateTimeOffset now) => All(db, now)
        .Where(row => db.Events.Any(happened => happened.Id == row.Event && happened.Type == EventTypes.WebhookTest))
        .OrderBy(row => row.Id);

    private static IQueryable<DeliveryRow> All(AppDb db, DateTimeOffset now) => db.Deliveries.Where(row =>
        row.State == DeliveryState.Owed && row.NextAt <= now && (row.LeaseUntil == null || row.LeaseUntil < now));
}
