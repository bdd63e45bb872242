using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>GET /v1/webhooks/{id}/deliveries, and one of them with its attempts.</summary>
internal static class GetDeliveries
{
    public static async Task<IResult> List(string id, HttpRequest request, AppDb db, CancellationToken cancel)
    {
        if (!await db.Endpoints.AnyAsync(row => row.Id == id, cancel))
            return EndpointRoutes.NoEndpoint(id);
        var reading = DeliveryQuery.Read(request.Query, id);
        if (!reading.Succeeded)
            return new Refusal(Problems.QueryInvalid, "The query cannot be used as it is.") { Violations = reading.Violations };

        var query = reading.Value;
        var rows = await Page(db, id, query, cancel);
        var shown = rows[..Math.Min(rows.Length, query.Limit)];
        var cursor = rows.Length > query.Limit ? query.CursorBehind(shown[^1].Id) : null;
        return new JsonAnswer(DeliveryJson.Page(shown, await Attempts(db, [.. shown.Select(row => row.Id)], cancel), cursor));
    }

    public static async Task<IResult> One(string id, string delivery, AppDb db, CancellationToken cancel)
    {
        var row = await db.Deliveries.AsNoTracking()
            .Where(row => row.Id == delivery && row.Target == id)
            .Where(row => db.Endpoints.Any(endpoint => endpoint.Id == id))
            .SingleOrDefaultAsync(cancel);
        return row is null
            ? new Refusal(Problems.NotFound, $"The endpoint '{id}' has no delivery '{delivery}'.")
            : new JsonAnswer(DeliveryJson.One(row, (await Attempts(db, [delivery], cancel))[delivery]));
    }

    // One row more than asked for tells whether there is another page.
    private static Task<DeliveryRow[]> Page(AppDb db, string id, DeliveryQuery query, CancellationToken cancel)
    {
        var rows = db.Deliveries.AsNoTracking().Where(row => row.Target == id);
        if (query.State is { } state)
            rows = rows.Where(row => row.State == state);
        if (query.Before is { } before)
            rows = rows.Where(row => string.Compare(row.Id, before) < 0);
        return rows.OrderByDescending(row => row.Id).Take(query.Limit + 1).ToArrayAsync(cancel);
    }

    private static async Task<ILookup<string, AttemptRow>> Attempts(AppDb db, string[] deliveries, CancellationToken cancel)
    {
        var rows = await db.Attempts.AsNoTracking()
            .Where(row => deliveries.Contains(row.Delivery))
            .OrderBy(row => row.Number)
            .ToArrayAsync(cancel);
        return rows.ToLookup(row => row.Delivery);
    }
}

/// <summary>What the list of deliveries is asked with.</summary>
/// <param name="Limit">1 to 200, default 50; larger is cut to 200.</param>
/// <param name="Before">Id behind which the page begins; null: at the newest.</param>
internal sealed record DeliveryQuery(string Endpoint, DeliveryState? State, int Limit, string? Before)
{
    private const int StandardLimit = 50;
    private const int LargestLimit = 200;

    private static readonly string[] Names = ["cursor", "limit", "state"];

    public static ReadResult<DeliveryQuery> Read(IQueryCollection query, string endpoint)
    {
        var faults = new Faults("query", "The list of deliveries");
        foreach (var name in query.Keys.Where(name => !Names.Contains(name)).Order(StringComparer.Ordinal))
            faults.NotAllowed("/" + name, ViolationCodes.UnknownField, $"The list of deliveries has no parameter '{name}'.", Names);
        var state = ReadState(query["state"], faults);
        var limit = ReadLimit(query["limit"], faults);
        var before = ReadCursor(query["cursor"], endpoint, state, faults);
        return faults.Any
            ? ReadResult<DeliveryQuery>.Refused(faults.Violations)
            : ReadResult<DeliveryQuery>.Of(new DeliveryQuery(endpoint, state, limit, before));
    }

    public string CursorBehind(string id) => Cursor(Endpoint, State, id);

    private static string Cursor(string endpoint, DeliveryState? state, string id) =>
        System.Buffers.Text.Base64Url.EncodeToString(System.Text.Encoding.UTF8.GetBytes($"{endpoint}:{state}:{id}"));

    private static DeliveryState? ReadState(string? text, Faults faults)
    {
        if (text is null)
            return null;
        if (Words<DeliveryState>.Standard.TryParse(text, out var state))
            return state;
        faults.NotAllowed("/state", ViolationCodes.BadFormat, "This is no state of a delivery.", Words<DeliveryState>.Standard.All);
        return null;
    }

    private static int ReadLimit(string? text, Faults faults)
    {
        if (text is null)
            return StandardLimit;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var limit) && limit >= 1)
            return Math.Min(limit, LargestLimit);
        faults.Add("/limit", ViolationCodes.BadFormat, "A limit is a whole number from 1 to 200.");
        return StandardLimit;
    }

    private static string? ReadCursor(string? text, string endpoint, DeliveryState? state, Faults faults)
    {
        if (text is null)
            return null;
        var id = Decoded(text).Split(':')[^1];
        if (id.StartsWith(Ids.Delivery, StringComparison.Ordinal) && Cursor(endpoint, state, id) == text)
            return id;
        faults.Add("/cursor", ViolationCodes.BadFormat, "This cursor was not given for this list with these filters.");
        return null;
    }

    private static string Decoded(string text) =>
        System.Buffers.Text.Base64Url.IsValid(text)
            ? System.Text.Encoding.UTF8.GetString(System.Buffers.Text.Base64Url.DecodeFromChars(text))
            : "";
}
