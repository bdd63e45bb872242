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

    /// <summary>Walks a body that is known to be JSON.</summary>
    internal static NumberWalk Through(ReadOnlyMemory<byte> body)
    {
        using var document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = JsonBody.MaxDepth });
        var walk = new NumberWalk();
        walk.Visit(document.RootElement, "", "");
        return walk;
    }

    internal static string Escape(string name) =>
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
        foreach (var member in element.EnumerateObject().Where(member => pointer.Length > 0 || member.Name != "sources"))
        {
            var name = $"{pointer}/{Escape(member.Name)}";
            Visit(member.Value, name, name);
        }
    }

    private void VisitItems(JsonElement element, string pointer, string owner)
    {
        var index = 0;
        foreach (var item in element.EnumerateArray())
            Visit(item, string.Create(CultureInfo.InvariantCulture, $"{pointer}/{index++}"), owner);
    }
}
