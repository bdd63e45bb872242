using System.Text.Json;

namespace CapPrep.Service.Catalog;

/// <summary>
/// The caller's own part of a body. What GET gave may be changed and sent back as it is: the members that the service
/// adds are passed over, since If-Match says which version is meant.
/// </summary>
internal static class GivenBody
{
    private static readonly string[] Added = ["version", "by", "at", "retired"];

    /// <summary>The body without what the service adds; the same bytes when there is none of it, or no JSON object.</summary>
    public static byte[] Of(byte[] body)
    {
        try
        {
            var members = Members(body);
            return members.Any(member => member.IsAdded) ? Joined(body, members) : body;
        }
        catch (JsonException)
        {
            // The resource's reader says where the body is broken.
            return body;
        }
    }

    private static List<(Range Bytes, bool IsAdded)> Members(byte[] body)
    {
        var members = new List<(Range, bool)>();
        var reader = new Utf8JsonReader(body);
        reader.Read();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1)
        {
            var start = (int)reader.TokenStartIndex;
            var isAdded = IsAdded(ref reader);
            reader.Read();
            reader.Skip();
            members.Add((start..(int)reader.BytesConsumed, isAdded));
        }

        return members;
    }

    private static bool IsAdded(ref Utf8JsonReader reader)
    {
        foreach (var name in Added)
        {
            if (reader.ValueTextEquals(name))
                return true;
        }

        return false;
    }

    private static byte[] Joined(byte[] body, List<(Range Bytes, bool IsAdded)> members)
    {
        var kept = new List<byte> { (byte)'{' };
        foreach (var (bytes, _) in members.Where(member => !member.IsAdded))
        {
            if (kept.Count > 1)
                kept.Add((byte)',');
            kept.AddRange(body[bytes]);
        }

        kept.Add((byte)'}');
        return [.. kept];
    }
}
