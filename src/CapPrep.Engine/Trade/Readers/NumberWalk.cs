using System.Globalization;
using System.Text.Json;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>Every pointer of a body outside its <c>sources</c>, and the members that hold numbers.</summary>
internal sealed class NumberWalk
{
    private readonly HashSet<string> _pointers = new(StringComparer.Ordinal);
    private readonly List<string> _owners = [];

    public IReadOnlySet<string> Pointers => _pointers;

    /// <summary>Pointers to members whose value is a number or nested arrays with one, each once.</summary>
    public IEnumerable<string> Owners => _owners.Distinct();

    /// <summary>Walks a body that has been read as JSON before.</summary>
    internal static NumberWalk Through(ReadOnlyMemory<byte> body)
    {
        using var document = JsonDocument.Parse(JsonBody.WithoutMark(body), new JsonDocumentOptions { MaxDepth = JsonBody.MaxDepth });
        var walk = new NumberWalk();
        walk.Visit(document.RootElement, "", "");
        return walk;
    }

    private static string Escape(string name) =>
        name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    private void Visit(JsonElement element, string pointer, string owner)
    {
        _pointers.Add(pointer);
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                VisitMembers(element, pointer);
                break;
            case JsonValueKind.Array:
                VisitItems(element, pointer, owner);
                break;
            case JsonValueKind.Number:
                _owners.Add(owner);
                break;
        }
    }

    private void VisitMembers(JsonElement element, string pointer)
    {
        foreach (var member in element.EnumerateObject())
        {
            if (NameOf(member) is not { } name || (pointer.Length == 0 && name == "sources"))
                continue;
            var place = $"{pointer}/{Escape(name)}";
            Visit(member.Value, place, place);
        }
    }

    /// <summary>Null for half of a surrogate pair, which is no member of ours and is reported as that.</summary>
    private static string? NameOf(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private void VisitItems(JsonElement element, string pointer, string owner)
    {
        var index = 0;
        foreach (var item in element.EnumerateArray())
            Visit(item, string.Create(CultureInfo.InvariantCulture, $"{pointer}/{index++}"), owner);
    }
}
