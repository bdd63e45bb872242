using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Access;
using CapPrep.Service.Docs;
using CapPrep.Service.Webhooks;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Docs;

/// <summary>The readers and the schemas say the same: of the examples, and of every bound in them.</summary>
public sealed class ReaderAgreementTests
{
    private static readonly ApiContract Contract = Composition.Contract;

    private static readonly Dictionary<string, (string Example, Func<byte[], IReadOnlyList<Violation>> Faults)> Readers = new()
    {
        ["Ticket"] = ("ticket", body => TicketReader.Read(body).Violations),
        ["Ticket in full"] = ("ticket-full", body => TicketReader.Read(body).Violations),
        ["CapStyle"] = ("cap-style", body => TradeReader.CapStyle(body).Violations),
        ["CapFrame"] = ("cap-frame", body => TradeReader.CapFrame(body).Violations),
        ["Machine"] = ("machine", body => TradeReader.Machine(body).Violations),
        ["FramingStation"] = ("framing-station", body => TradeReader.FramingStation(body).Violations),
        ["RuleBook"] = ("rule-book", body => TradeReader.RuleBook(body, Embedded.HouseBook).Violations),
        ["EndpointRequest"] = ("webhook-request", body => EndpointReader.Read(body).Violations),
        ["KeyRequest"] = ("key-request", body => KeyReader.Read(body, new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero)).Violations),
        ["Shop"] = ("shop", body => TradeReader.Shop(body).Violations),
    };

    public static TheoryData<string> Schemas => [.. Readers.Keys];

    [Theory]
    [MemberData(nameof(Schemas))]
    public void The_example_is_read_without_a_fault(string schema) =>
        Readers[schema].Faults(Bytes(Example(schema))).ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Schemas))]
    public void A_member_that_must_be_there_is_missed_by_both(string schema)
    {
        foreach (var name in Contract.Document["components"]!["schemas"]![schema.Split(' ')[0]]!["required"]!.AsArray().Select(name => name!.GetValue<string>()))
        {
            var body = Example(schema);
            body.Remove(name);

            Readers[schema].Faults(Bytes(body)).ShouldContain(fault => fault.Pointer == "/" + name && fault.Code == ViolationCodes.Required, name);
            Contract.Faults(Reference(schema), body).ShouldNotBeEmpty(name);
        }
    }

    [Theory]
    [MemberData(nameof(Schemas))]
    public void A_member_that_may_be_absent_is_missed_by_neither(string schema)
    {
        var listed = Contract.Document["components"]!["schemas"]![schema.Split(' ')[0]]!;
        var required = listed["required"]!.AsArray().Select(name => name!.GetValue<string>()).ToArray();
        foreach (var name in listed["properties"]!.AsObject().Select(member => member.Key).Except(required).Except(["capStyle", "capSku", "capLots"]))
        {
            var body = Example(schema);
            body.Remove(name);

            Readers[schema].Faults(Bytes(body)).ShouldNotContain(fault => fault.Pointer == "/" + name, name);
        }
    }

    /// <summary>The longest and highest value is let pass, the next is refused, by the reader as by the schema.</summary>
    [Theory]
    [MemberData(nameof(Schemas))]
    public void Bounds_lie_at_the_same_place(string schema)
    {
        var places = Places(Reference(schema), "", Example(schema)).ToArray();

        places.ShouldNotBeEmpty();
        foreach (var (pointer, leaf) in places)
        {
            foreach (var (value, allowed) in AtTheEdges(leaf))
                Refuses(schema, pointer, value).ShouldBe(!allowed, $"{schema}{pointer} = {value.ToJsonString()[..Math.Min(40, value.ToJsonString().Length)]}");
        }
    }

    private static bool Refuses(string schema, string pointer, JsonNode value)
    {
        string[] bounds = [ViolationCodes.OutOfRange, ViolationCodes.TooLong, ViolationCodes.BadFormat, ViolationCodes.UnknownId];
        var body = Example(schema);
        Set(body, pointer, value);
        return Readers[schema].Faults(Bytes(body)).Any(fault => fault.Pointer == pointer && bounds.Contains(fault.Code));
    }

    private static IEnumerable<(JsonNode Value, bool Allowed)> AtTheEdges(JsonObject leaf)
    {
        if (leaf["minimum"] is { } minimum && leaf["maximum"] is { } maximum)
        {
            var step = leaf["type"]!.GetValue<string>() == "integer" ? 1 : 0.001;
            foreach (var (edge, outward) in new[] { (minimum.GetValue<double>(), -step), (maximum.GetValue<double>(), step) })
            {
                yield return (JsonValue.Create(edge), true);
                yield return (JsonValue.Create(edge + outward), false);
            }
        }

        if (leaf["maxLength"] is { } longest && leaf["minLength"] is not null)
        {
            yield return (JsonValue.Create(new string('a', longest.GetValue<int>())), true);
            yield return (JsonValue.Create(new string('a', longest.GetValue<int>() + 1)), false);
        }

        if (leaf["enum"] is JsonArray)
            yield return (JsonValue.Create("none-of-these"), false);
    }

    /// <summary>Every member of an example with the schema of a number, a text or a word.</summary>
    private static IEnumerable<(string Pointer, JsonObject Leaf)> Places(JsonNode schema, string pointer, JsonNode? value)
    {
        var resolved = Contract.Resolved(schema).AsObject();
        return IsCheckedElsewhere(pointer) ? [] : value switch
        {
            JsonObject members => members.SelectMany(member => Places(
                resolved["properties"]?[member.Key] ?? resolved["additionalProperties"]!,
                $"{pointer}/{member.Key.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}",
                member.Value)),
            JsonArray items => items.SelectMany((item, index) => Places(resolved["items"]!, $"{pointer}/{index}", item)),
            _ => resolved["oneOf"] is not null ? [] : [(pointer, resolved)],
        };
    }

    /// <summary>Free JSON, and texts whose words the readers look up: a source, a unit.</summary>
    private static bool IsCheckedElsewhere(string pointer) =>
        pointer.StartsWith("/echo", StringComparison.Ordinal) || pointer.StartsWith("/sources", StringComparison.Ordinal) || pointer.EndsWith("/unit", StringComparison.Ordinal);

    private static void Set(JsonObject body, string pointer, JsonNode value)
    {
        var names = pointer.Split('/')[1..];
        JsonNode owner = body;
        foreach (var name in names[..^1])
            owner = owner is JsonArray items ? items[int.Parse(name)]! : owner[Unescaped(name)]!;
        if (owner is JsonArray list)
            list[int.Parse(names[^1])] = value;
        else
            owner[Unescaped(names[^1])] = value;
    }

    private static string Unescaped(string name) => name.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);

    private static JsonObject Reference(string schema) => new() { ["$ref"] = "#/components/schemas/" + schema.Split(' ')[0] };

    private static JsonObject Example(string schema) =>
        Examples.All()[Readers[schema].Example].DeepClone().AsObject();

    private static byte[] Bytes(JsonNode body) => Encoding.UTF8.GetBytes(body.ToJsonString(JsonSerializerOptions.Default));
}
