using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Catalog;

/// <summary>Writes one rule with its limits in force.</summary>
internal static class EffectiveRuleJson
{
    public static void Write(Utf8JsonWriter writer, EffectiveRule rule)
    {
        var row = rule.Row;
        writer.WriteStartObject();
        writer.WriteString("rule", row.Rule);
        writer.WriteString("group", row.Group);
        writer.WriteString("says", row.Says);
        writer.WriteBoolean("off", rule.Off);
        writer.WriteString("measures", row.Measures);
        writer.WriteString("unit", row.Unit);
        writer.WriteString("is", Words<LimitIs>.Standard.Of(row.Is));
        writer.WriteStartArray("limits");
        foreach (var limit in rule.Limits)
            Write(writer, limit);
        writer.WriteEndArray();
        WriteParameters(writer, row);
        writer.WriteString("kind", Words<LimitKind>.Standard.Of(row.Kind));
        WriteSources(writer, row);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, EffectiveLimit limit)
    {
        writer.WriteStartObject();
        writer.WriteString("level", Words<Severity>.Standard.Of(limit.Limit.Level));
        if (limit.Limit.Value is { } value)
            writer.WriteNumber("value", value);
        if (limit.Limit.From is { } from)
        {
            writer.WriteString("from", from);
            writer.WriteString("pointer", limit.Limit.Pointer);
        }

        if (limit.Limit.Plus != 0)
            writer.WriteNumber("plus", limit.Limit.Plus);
        writer.WriteStartObject("setBy");
        writer.WriteString("ruleBook", limit.SetBy.Id);
        writer.WriteNumber("version", limit.SetBy.Version);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void WriteParameters(Utf8JsonWriter writer, RuleRow row)
    {
        writer.WriteStartObject("parameters");
        foreach (var (name, value) in row.Parameters.OrderBy(pair => pair.Key, StringComparer.Ordinal))
            writer.WriteNumber(name, value);
        writer.WriteEndObject();
    }

    private static void WriteSources(Utf8JsonWriter writer, RuleRow row)
    {
        writer.WriteStartArray("sources");
        foreach (var source in row.Sources)
        {
            writer.WriteStartObject();
            writer.WriteString("row", source);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
