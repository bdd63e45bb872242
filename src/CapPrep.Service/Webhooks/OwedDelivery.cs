using CapPrep.Service.Events;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>A delivery with all that is needed to make it.</summary>
/// <param name="Endpoint">Null: removed.</param>
/// <param name="Traceparent">Trace of the event's job.</param>
internal sealed record OwedDelivery(DeliveryRow Delivery, EventRow Event, EndpointRow? Endpoint, string? Traceparent)
{
    /// <summary>The fence it was claimed with.</summary>
    public long Fence { get; init; }

    /// <summary>Sent once at a person's wish, whatever the endpoint's state.</summary>
    public bool IsTest => Event.Type == EventTypes.WebhookTest;

    public bool HasReceiver => Endpoint is not null && (IsTest || Endpoint.State != EndpointState.SwitchedOff);

    /// <summary>While paused, only one goes out, when the pause is over.</summary>
    public bool NeedsProbe => !IsTest && Endpoint?.State == EndpointState.Paused;

    public bool MayGo(DateTimeOffset now) => IsTest || Endpoint switch
    {
        { State: EndpointState.On } => true,
        { State: EndpointState.Paused } => Endpoint.PausedUntil <= now,
        _ => false,
    };

    /// <summary>Null when there is no such delivery.</summary>
    public static async Task<OwedDelivery?> Load(AppDb db, string id, CancellationToken cancel)
    {
        var found = await db.Deliveries.AsNoTracking()
            .Where(delivery => delivery.Id == id)
            .Select(delivery => new
            {
                Delivery = delivery,
                Event = db.Events.Single(happened => happened.Id == delivery.Event),
                Endpoint = db.Endpoints.SingleOrDefault(endpoint => endpoint.Id == delivery.Target),
                Traceparent = db.Events
                    .Where(happened => happened.Id == delivery.Event)
                    .Join(db.Jobs, happened => happened.Job, job => job.Id, (_, job) => job.Traceparent)
                    .FirstOrDefault(),
            })
            .SingleOrDefaultAsync(cancel);
        return found is null ? null : new OwedDelivery(found.Delivery, found.Event, found.Endpoint, found.Traceparent);
    }
}
