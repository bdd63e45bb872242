using System.Buffers.Text;
using System.Text;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
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
        var (query, refusal) = DeliveryQuery.Read(request.Query, id);
        if (query is null)
            return refusal!;

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
/// <param name="State">Null: any.</param>
/// <param name="Before">Id behind which the page begins; null: at the newest.</param>
internal sealed record DeliveryQuery(string Endpoint, DeliveryState? State, int Limit, string? Before)
{
    public static (DeliveryQuery? Query, Refusal? Refusal) Read(IQueryCollection parameters, string endpoint)
    {
        var reader = new QueryReader(parameters, "state", "limit", "cursor");
        DeliveryState? state = Words<DeliveryState>.Standard.TryParse(reader.Word("state", Words<DeliveryState>.Standard.All) ?? "", out var word) ? word : null;
        var query = new DeliveryQuery(endpoint, state, reader.Limit(), null);
        if (reader.Text("cursor") is { } cursor)
            query = query with { Before = query.IdIn(cursor, reader) };
        return reader.Refusal is { } refusal ? (null, refusal) : (query, null);
    }

    /// <summary>What to ask the page behind a delivery with; good for this list with these filters only.</summary>
    public string CursorBehind(string id) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes($"{Endpoint}:{State}:{id}"));

    private string? IdIn(string cursor, QueryReader reader)
    {
        var id = Base64Url.IsValid(cursor) ? Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)).Split(':')[^1] : "";
        if (CursorBehind(id) == cursor)
            return id;
        reader.Fault("cursor", ViolationCodes.BadFormat, "This cursor was not given for this list with these filters.");
        return null;
    }
}
