using System.Buffers.Text;
using System.Text;
using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Calls;

/// <summary>Which part of a list is asked for.</summary>
/// <param name="Limit">Items wanted, 1 to 200.</param>
/// <param name="After">Position behind which the page begins; null: at the start.</param>
/// <param name="Filters">What the list is limited to; a cursor is good for the same filters only.</param>
internal sealed record Page(int Limit, string? After, string Filters)
{
    /// <summary>Reads <c>limit</c> and <c>cursor</c>; faults go to the reader.</summary>
    public static Page Read(QueryReader query, string filters)
    {
        var limit = query.Limit();
        if (query.Text("cursor") is not { } cursor)
            return new Page(limit, null, filters);
        var after = Opened(cursor, filters);
        if (after is null)
            query.Fault("cursor", ViolationCodes.Contradicts, "This cursor was not given for this list.");
        return new Page(limit, after, filters);
    }

    /// <summary>Writes the answer of a list: the items, and where the next page begins when there is one.</summary>
    /// <param name="found">One item more than asked for when there are more.</param>
    /// <param name="position">What the next page begins behind.</param>
    public byte[] Written<T>(IReadOnlyList<T> found, Func<T, string> position, Action<Utf8JsonWriter, T> write) => Json.Bytes(writer =>
    {
        var items = found.Take(Limit).ToArray();
        writer.WriteStartObject();
        writer.WriteStartArray("items");
        foreach (var item in items)
            write(writer, item);
        writer.WriteEndArray();
        if (found.Count > Limit)
            writer.WriteString("cursor", CursorBehind(position(items[^1])));
        writer.WriteBoolean("more", found.Count > Limit);
        writer.WriteEndObject();
    });

    private string CursorBehind(string position) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(Mark(Filters) + position));

    private static string? Opened(string cursor, string filters)
    {
        if (!Base64Url.IsValid(cursor))
            return null;
        var text = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor));
        var mark = Mark(filters);
        return text.StartsWith(mark, StringComparison.Ordinal) ? text[mark.Length..] : null;
    }

    private static string Mark(string filters) => DocumentStore.Sha(Encoding.UTF8.GetBytes(filters))[..8] + " ";
}
