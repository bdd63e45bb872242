using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>One member of an object in the document.</summary>
internal sealed record Member(string Name, JsonObject Schema, bool Required);

/// <summary>
/// The words that schemas (JSON Schema 2020-12) are written in. Every text, list and whole number has a bound, so none
/// can be written without one.
/// </summary>
internal static class Shape
{
    /// <summary>Longest text an answer holds where nothing narrower is known.</summary>
    public const int LongText = 2000;

    private const string NoControls = "^[^\\u0000-\\u001F\\u007F-\\u009F]*$";

    /// <summary>Text of 1 to so many characters (Unicode scalar values) without control characters.</summary>
    public static JsonObject Text(int longest) => new()
    {
        ["type"] = "string",
        ["minLength"] = 1,
        ["maxLength"] = longest,
        ["pattern"] = NoControls,
    };

    /// <summary>A text that may be empty.</summary>
    public static JsonObject AnyText(int longest) => new()
    {
        ["type"] = "string",
        ["maxLength"] = longest,
        ["pattern"] = NoControls,
    };

    public static JsonObject Pattern(int longest, string pattern) => new()
    {
        ["type"] = "string",
        ["maxLength"] = longest,
        ["pattern"] = pattern,
    };

    public static JsonObject Word(params IEnumerable<string> words) => new()
    {
        ["type"] = "string",
        ["enum"] = new JsonArray([.. words.Select(word => JsonValue.Create(word))]),
    };

    /// <summary>The words of an enumeration, as the readers and writers know them.</summary>
    public static JsonObject Word<T>()
        where T : struct, Enum =>
        Word(Words<T>.Standard.All);

    public static JsonObject Const(string word) => new() { ["type"] = "string", ["const"] = word };

    public static JsonObject Integer(long minimum, long maximum) => new()
    {
        ["type"] = "integer",
        ["format"] = maximum > int.MaxValue ? "int64" : "int32",
        ["minimum"] = minimum,
        ["maximum"] = maximum,
    };

    /// <summary>A count, from 0.</summary>
    public static JsonObject Count() => Integer(0, int.MaxValue);

    public static JsonObject Number(double minimum, double maximum) => new()
    {
        ["type"] = "number",
        ["minimum"] = minimum,
        ["maximum"] = maximum,
    };

    public static JsonObject Flag() => new() { ["type"] = "boolean" };

    public static JsonObject Url(int longest) => new()
    {
        ["type"] = "string",
        ["format"] = "uri-reference",
        ["minLength"] = 1,
        ["maxLength"] = longest,
    };

    public static JsonObject Ref(string name) => new() { ["$ref"] = "#/components/schemas/" + name };

    public static JsonObject List(JsonObject items, int most, int fewest = 0)
    {
        var list = new JsonObject { ["type"] = "array" };
        if (fewest > 0)
            list["minItems"] = fewest;
        list["maxItems"] = most;
        list["items"] = items;
        return list;
    }

    /// <summary>An object whose member names are data.</summary>
    public static JsonObject Map(JsonObject values, int most) => new()
    {
        ["type"] = "object",
        ["maxProperties"] = most,
        ["additionalProperties"] = values,
    };

    public static JsonObject OneOf(params IEnumerable<JsonObject> schemas) => new() { ["oneOf"] = new JsonArray([.. schemas]) };

    public static Member Req(string name, JsonObject schema, string? says = null) => new(name, Said(schema, says), true);

    public static Member Opt(string name, JsonObject schema, string? says = null) => new(name, Said(schema, says), false);

    /// <summary>What callers send: members that are not listed are refused.</summary>
    public static JsonObject Closed(params IEnumerable<Member> members)
    {
        var schema = Open(members);
        schema["additionalProperties"] = false;
        return schema;
    }

    /// <summary>What the service answers: members may be added.</summary>
    public static JsonObject Open(params IEnumerable<Member> members)
    {
        var listed = members.ToArray();
        var schema = new JsonObject { ["type"] = "object" };
        var required = listed.Where(member => member.Required).Select(member => JsonValue.Create(member.Name)).ToArray();
        if (required.Length > 0)
            schema["required"] = new JsonArray(required);
        schema["properties"] = new JsonObject(listed.Select(member => KeyValuePair.Create(member.Name, (JsonNode?)member.Schema)));
        return schema;
    }

    /// <summary>Adds a sentence for the reader.</summary>
    public static JsonObject Says(this JsonObject schema, string sentence) => Said(schema, sentence);

    private static JsonObject Said(JsonObject schema, string? sentence)
    {
        if (sentence is not null)
            schema["description"] = sentence;
        return schema;
    }
}
