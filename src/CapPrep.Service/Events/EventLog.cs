using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Events;

/// <summary>An event that is about to be written.</summary>
/// <param name="Type">A word of <see cref="EventTypes"/>.</param>
/// <param name="Position">Taken from the shop's counter in the same transaction.</param>
/// <param name="Data">The member <c>data</c> of the body, a JSON object.</param>
internal sealed record NewEvent(string Shop, string Type, long Position, DateTimeOffset At, byte[] Data)
{
    /// <summary>Job it belongs to; an order's event belongs to the job that made it whole.</summary>
    public string? Job { get; init; }

    /// <summary>Drop whose answer folder is owed the event.</summary>
    public string? Drop { get; init; }

    /// <summary>Endpoint that is not told.</summary>
    public string? Except { get; init; }
}

/// <summary>
/// The one log from which webhooks, the feed and hot-folder answers are owed. Whoever writes holds the shop's
/// position counter, so events are in the order of their commits and a reader that has seen one has seen all before.
/// </summary>
internal sealed class EventLog(AppDb db, Settings settings, TimeProvider clock)
{
    /// <summary>Most bytes of a body.</summary>
    public const int MostBytes = 20_000;

    /// <summary>
    /// Writes an event with its frozen body and one owed delivery per endpoint that wants its type, in the caller's
    /// transaction. Gives the deliveries that are due at once, to be handed over after the commit.
    /// </summary>
    public async Task<IReadOnlyList<string>> Append(NewEvent happened, CancellationToken cancel)
    {
        var sequence = await db.Next(happened.Shop, Counters.Sequence(happened.Type), cancel);
        var previous = await db.Events
            .Where(row => row.Shop == happened.Shop && row.Type == happened.Type && row.Sequence == sequence - 1)
            .Select(row => row.Id)
            .SingleOrDefaultAsync(cancel);
        var row = new EventRow
        {
            Shop = happened.Shop,
            Id = Ids.New(Ids.Event, clock),
            Position = happened.Position,
            Type = happened.Type,
            Sequence = sequence,
            PreviousId = previous,
            Job = happened.Job,
            Body = [],
            At = happened.At,
        };
        row.Body = Body(row, happened.Data);
        db.Events.Add(row);
        var deliveries = await Owe(row, happened, cancel);
        db.Deliveries.AddRange(deliveries);
        await db.SaveChangesAsync(cancel);
        return [.. deliveries.Where(delivery => delivery.NextAt <= happened.At).Select(delivery => delivery.Id)];
    }

    /// <summary>Takes the caller's own data out of the bodies of a job's events, in the caller's transaction.</summary>
    public async Task ForgetEcho(string job, CancellationToken cancel)
    {
        foreach (var row in await db.Events.Where(row => row.Job == job).ToListAsync(cancel))
        {
            var body = JsonNode.Parse(row.Body)!;
            if (body["data"] is JsonObject data && data.Remove("echo"))
                row.Body = JsonSerializer.SerializeToUtf8Bytes(body, Json.Written);
        }

        await db.SaveChangesAsync(cancel);
    }

    /// <summary>The body of an event: what every receiver gets at every attempt, and what the feed shows.</summary>
    public static byte[] Body(EventRow row, byte[] data) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("id", row.Id);
        writer.WriteString("type", row.Type);
        writer.WriteString("timestamp", Json.Time(row.At));
        writer.WriteString("shop", row.Shop);
        if (row.Sequence is { } sequence)
            writer.WriteNumber("sequence", sequence);
        if (row.PreviousId is not null)
            writer.WriteString("previousId", row.PreviousId);
        writer.WritePropertyName("data");
        writer.WriteRawValue(data);
        writer.WriteEndObject();
    });

    private async Task<DeliveryRow[]> Owe(EventRow row, NewEvent happened, CancellationToken cancel)
    {
        var endpoints = await db.Endpoints.AsNoTracking()
            .Where(endpoint => endpoint.Shop == row.Shop
                && endpoint.Id != happened.Except
                && (endpoint.State == EndpointState.On || endpoint.State == EndpointState.Paused))
            .OrderBy(endpoint => endpoint.Id)
            .ToArrayAsync(cancel);
        var due = happened.At.AddSeconds(settings.Webhooks.WaitsSeconds[0]);
        var owed = endpoints
            .Where(endpoint => endpoint.Types.Split(',').Contains(row.Type, StringComparer.Ordinal))
            .Select(endpoint => Owed(row, endpoint.Id, endpoint.PausedUntil > due ? endpoint.PausedUntil.Value : due));
        return [.. happened.Drop is null ? owed : owed.Append(Owed(row, happened.Drop, happened.At))];
    }

    private DeliveryRow Owed(EventRow row, string target, DateTimeOffset due) => new()
    {
        Shop = row.Shop,
        Id = Ids.New(Ids.Delivery, clock),
        Event = row.Id,
        Target = target,
        State = DeliveryState.Owed,
        NextAt = due,
    };
}
