using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>Reads the built-in book: every row in full.</summary>
internal static class HouseBookReader
{
    /// <summary>Stands for a limit of a level that has no number to compare.</summary>
    internal const string AlwaysWord = "always";

    internal static ReadResult<HouseBook> Read(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, new Faults("body", "The built-in rule book"), Book);

    private static HouseBook? Book(ObjectReader reader)
    {
        reader.Require("id", "version", "sewOrder", "rules");
        reader.Word("id", HouseBook.BookId);
        var rows = reader.Objects("rules", 1, 500, Row) ?? [];
        if (rows.DistinctBy(row => row.Rule).Count() < rows.Count)
            reader.Contradicts("rules", "Two rows have the same id.");
        return new(
            reader.Integer("version", 1, int.MaxValue) ?? 0,
            rows,
            reader.Object("sewOrder", RuleBookReader.SewOrder)!);
    }

    private static RuleRow? Row(ObjectReader reader)
    {
        reader.Require(
            "rule", "group", "says", "appliesTo", "measures", "unit", "is", "limits", "parameters", "asks", "kind",
            "sources");
        return new()
        {
            Rule = reader.Text("rule", 60) ?? "",
            Group = reader.Text("group", 20) ?? "",
            Says = reader.Text("says", 200) ?? "",
            AppliesTo = reader.Object("appliesTo", Scope)!,
            Measures = reader.Text("measures", 200) ?? "",
            Unit = reader.Text("unit", 20) ?? "",
            Is = reader.Choice("is", Words<LimitIs>.Standard) ?? default,
            Limits = reader.Object("limits", Limits) ?? [],
            Parameters = reader.Object("parameters", Parameters)!,
            HoldAsks = reader.Object("asks", AsksOf)?.OfHold ?? default,
            Remedy = reader.Object("remedy", Remedy),
            Kind = reader.Choice("kind", Words<LimitKind>.Standard) ?? default,
            Sources = [.. (reader.Objects("sources", 0, 10, Source) ?? []).Select(source => source.Row)],
            HoldStaysAtLeastWarn = reader.Flag("holdStaysAtLeastWarn") ?? false,
        };
    }

    private static RuleScope? Scope(ObjectReader reader) => new(
        reader.Choices<CapLocation>("locations", 0),
        reader.Choices<FrameHold>("heldBy", 0),
        reader.Choices<Technique>("techniques", 0),
        reader.Flag("centerSeamOnly") ?? false);

    private static IReadOnlyList<RuleLimit> Limits(ObjectReader reader) =>
        [.. Enum.GetValues<Severity>().Select(level => Limit(reader, level)).OfType<RuleLimit>()];

    private static RuleLimit? Limit(ObjectReader reader, Severity level)
    {
        var name = Words<Severity>.Standard.Of(level);
        return reader.Element(name)?.ValueKind switch
        {
            null => null,
            JsonValueKind.Number => new(level) { Value = reader.Number(name, -1000, 1_000_000) },
            JsonValueKind.Object => reader.Object(name, inner => Place(inner, level)),
            _ => reader.Word(name, AlwaysWord) is null ? null : new(level),
        };
    }

    private static RuleLimit? Place(ObjectReader reader, Severity level)
    {
        reader.Require("from", "pointer");
        var limit = new RuleLimit(level)
        {
            From = reader.Text("from", 20),
            Pointer = reader.Text("pointer", 60),
            Plus = reader.Number("plus", -1000, 1000) ?? 0,
        };
        if (!LimitValue.Places.Contains((limit.From ?? "", limit.Pointer ?? "")))
            reader.Contradicts("pointer", "No limit can be taken from there.");
        return limit;
    }

    private static IReadOnlyDictionary<string, double>? Parameters(ObjectReader reader)
    {
        var parameters = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (var name in reader.Names)
            parameters[name] = reader.Number(name, -1_000_000, 1_000_000) ?? 0;
        return parameters;
    }

    private static HoldAsks? AsksOf(ObjectReader reader)
    {
        reader.Require("hold");
        reader.Word("note", "nothing");
        reader.Word("warn", "nothing");
        return new(reader.Choice("hold", Words<Asks>.Standard) ?? default);
    }

    private static RuleRemedy? Remedy(ObjectReader reader)
    {
        reader.Require("who", "message");
        return new(reader.Choice("who", Words<Actor>.Standard) ?? default, reader.Text("message", 200) ?? "");
    }

    private static RowOf? Source(ObjectReader reader)
    {
        reader.Require("row");
        return new(reader.Text("row", 10) ?? "");
    }

    private sealed record HoldAsks(Asks OfHold);

    private sealed record RowOf(string Row);
}
