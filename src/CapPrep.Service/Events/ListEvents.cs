using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Events;

/// <summary>GET /v1/events: the log behind an event, oldest first; the same bodies that webhooks carry.</summary>
internal static class ListEvents
{
    /// <summary>Stands for the place before the first event of a log that was always empty.</summary>
    private static readonly string Beginning = Ids.Event + new string('0', 32);

    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet("/v1/events", Handle)
        .WithName("listEvents")
        .Admits(Scopes.Read);

    private static async Task<IResult> Handle(
        HttpContext context, AppDb db, ShopScope shop, Waiting waiting, CancellationToken cancel)
    {
        var reader = new QueryReader(context.Request.Query, "after", "type", "limit");
        var asked = reader.Text("after");
        var types = reader.Words("type", EventTypes.All);
        var limit = reader.Limit();
        if (reader.Refusal is { } wrong)
            return wrong;

        var newest = await Newest(db, cancel);
        var (position, refusal) = await PositionOf(db, asked, newest, cancel);
        if (refusal is not null)
            return refusal;

        using var waiter = waiting.Enter(context.Request, shop.Required);
        var behind = Behind(db, types, position);
        await waiting.Until(waiter, () => behind.AnyAsync(cancel), cancel);
        newest = await Newest(db, cancel) ?? newest;
        var found = await behind.OrderBy(row => row.Position).Take(limit + 1).Select(row => new Item(row.Id, row.Body)).ToListAsync(cancel);
        var items = found.Take(limit).ToArray();
        return TypedResults.Bytes(Page(items, After(items, newest, asked), found.Count > limit), Json.ContentType);
    }

    private static IQueryable<EventRow> Behind(AppDb db, IReadOnlyList<string> types, long position)
    {
        var rows = db.Events.AsNoTracking().Where(row => row.Position > position && row.Sequence != null);
        return types.Count == 0 ? rows : rows.Where(row => types.Contains(row.Type));
    }

    private static Task<Mark?> Newest(AppDb db, CancellationToken cancel) => db.Events.AsNoTracking()
        .Where(row => row.Sequence != null)
        .OrderByDescending(row => row.Position)
        .Select(row => new Mark(row.Id, row.Position))
        .FirstOrDefaultAsync(cancel);

    private static async Task<(long Position, Refusal? Refusal)> PositionOf(
        AppDb db, string? after, Mark? newest, CancellationToken cancel)
    {
        if (after is null || after == Beginning)
            return (0, null);
        if (after == "now")
            return (newest?.Position ?? 0, null);
        var mark = await db.Events.AsNoTracking().Where(row => row.Id == after).Select(row => new Mark(row.Id, row.Position)).FirstOrDefaultAsync(cancel);
        return mark is null ? (0, await Unknown(db, after, cancel)) : (mark.Position, null);
    }

    /// <summary>An id made before the oldest event that is kept stands for one that is no longer kept.</summary>
    private static async Task<Refusal> Unknown(AppDb db, string after, CancellationToken cancel)
    {
        var oldest = await db.Events.AsNoTracking()
            .Where(row => row.Sequence != null)
            .OrderBy(row => row.Position)
            .Select(row => new { row.Id, row.At })
            .FirstOrDefaultAsync(cancel);
        if (TimeOf(after) is { } made && (oldest is null || made < oldest.At))
        {
            var kept = oldest is null ? "No event is kept now." : $"The oldest event kept is {oldest.Id}.";
            return new Refusal(Problems.EventExpired, $"The event '{after}' is no longer kept. {kept}");
        }

        return new Refusal(Problems.QueryInvalid, "Wrong in the query: after.")
        {
            Violations = [new Violation("query", ViolationCodes.UnknownId, $"There is no event '{after}'.") { Pointer = "after" }],
        };
    }

    /// <summary>The time inside a version-7 id; null when it is no id of an event.</summary>
    private static DateTimeOffset? TimeOf(string id) =>
        id.Length == Ids.Event.Length + 32
        && id.StartsWith(Ids.Event, StringComparison.Ordinal)
        && long.TryParse(id.AsSpan(Ids.Event.Length, 12), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var milliseconds)
        && milliseconds <= DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()
            ? DateTimeOffset.FromUnixTimeMilliseconds(milliseconds)
            : null;

    // Everything up to the newest event was looked at, so an empty page may point behind it.
    private static string After(Item[] items, Mark? newest, string? asked) =>
        items is [.., var last] ? last.Id
        : newest?.Id ?? (asked is null or "now" ? Beginning : asked);

    private static byte[] Page(Item[] items, string after, bool more) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteStartArray("items");
        foreach (var item in items)
            writer.WriteRawValue(item.Body);
        writer.WriteEndArray();
        writer.WriteString("after", after);
        writer.WriteBoolean("more", more);
        writer.WriteEndObject();
    });

    private sealed record Mark(string Id, long Position);

    private sealed record Item(string Id, byte[] Body);
}
