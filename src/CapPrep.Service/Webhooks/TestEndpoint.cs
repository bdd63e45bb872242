using System.Text.Json;
using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// POST /v1/webhooks/{id}/test: owes one event <c>webhook.test</c> to this endpoint alone, whatever its state. It has
/// no sequence, is not in the feed, is tried once and counts neither for nor against the endpoint.
/// </summary>
internal static class TestEndpoint
{
    public static async Task<IResult> Handle(
        string id, HttpContext context, AppDb db, [FromServices] IHandover handover, TimeProvider clock)
    {
        var cancel = context.RequestAborted;
        if (!await db.Endpoints.AnyAsync(row => row.Id == id, cancel))
            return EndpointRoutes.NoEndpoint(id);

        var now = clock.GetUtcNow();
        var shop = context.Caller().Shop;
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        var position = await db.Next(shop, Counters.Position, cancel);
        var happened = Event(shop, id, position, now, clock);
        var owed = new DeliveryRow
        {
            Shop = shop,
            Id = Ids.New(Ids.Delivery, clock),
            Event = happened.Id,
            Target = id,
            State = DeliveryState.Owed,
            NextAt = now,
        };
        db.AddRange(happened, owed);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        handover.Deliver(owed.Id);
        return new JsonAnswer(DeliveryJson.One(owed, []), StatusCodes.Status202Accepted)
        {
            Location = $"/v1/webhooks/{id}/deliveries/{owed.Id}",
        };
    }

    private static EventRow Event(string shop, string endpoint, long position, DateTimeOffset now, TimeProvider clock)
    {
        var row = new EventRow
        {
            Shop = shop,
            Id = Ids.New(Ids.Event, clock),
            Position = position,
            Type = EventTypes.WebhookTest,
            Body = [],
            At = now,
        };
        row.Body = EventLog.Body(row, JsonSerializer.SerializeToUtf8Bytes(new { endpoint }, Json.Written));
        return row;
    }
}
