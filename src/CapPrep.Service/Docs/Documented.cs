using System.Globalization;
using System.Text.Json.Nodes;

namespace CapPrep.Service.Docs;

/// <summary>Small pieces of an OpenAPI document.</summary>
internal static class Documented
{
    public static readonly Func<string, string> Same = name => name;

    /// <summary>A map of references to components.</summary>
    /// <param name="section">Section of the components.</param>
    /// <param name="key">The key under which a component stands here.</param>
    public static JsonObject Refs(string section, IEnumerable<string> names, Func<string, string> key) =>
        new(names.Select(name => KeyValuePair.Create(key(name), (JsonNode?)Ref(section, name))));

    public static JsonObject Ref(string section, string name) => new() { ["$ref"] = $"#/components/{section}/{name}" };

    /// <summary>The components of a section that some nodes refer to.</summary>
    public static HashSet<string> Named(string section, params IEnumerable<JsonNode?> nodes)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<JsonNode?>(nodes);
        while (open.TryPop(out var node))
        {
            if (node is JsonValue text && text.TryGetValue<string>(out var reference) && reference.StartsWith($"#/components/{section}/", StringComparison.Ordinal))
                names.Add(reference[(reference.LastIndexOf('/') + 1)..]);
            foreach (var below in node switch { JsonObject value => value.Select(member => member.Value), JsonArray items => items, _ => [] })
                open.Push(below);
        }

        return names;
    }

    public static string Status(int status) => status.ToString(CultureInfo.InvariantCulture);

    /// <summary>A section of the components.</summary>
    public static JsonObject Section<T>(IEnumerable<KeyValuePair<string, T>> parts)
        where T : JsonNode =>
        new(parts.OrderBy(part => part.Key, StringComparer.Ordinal).Select(part => KeyValuePair.Create(part.Key, (JsonNode?)part.Value)));
}
