using System.Text.Json;
using CapPrep.Engine.Losses;

namespace CapPrep.Service.Results;

/// <summary>Writes the proof that nothing was lost; its clauses are P1 to P10.</summary>
internal static class LossCheckJson
{
    public static void Write(Utf8JsonWriter writer, LossCheckResult result)
    {
        writer.WriteStartObject("lossCheck");
        writer.WriteStartArray("clauses");
        foreach (var clause in result.Clauses)
        {
            writer.WriteStartObject();
            writer.WriteString("clause", NameOf(clause.Clause));
            writer.WriteBoolean("passed", clause.Passed);
            writer.WriteNumber("count", clause.Count);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteNumber("tiesAdded", result.TiesAdded);
        writer.WriteNumber("dropped", result.Dropped);
        writer.WriteNumber("newLinks", result.NewLinks);
        writer.Point("originShiftMm", result.OriginShift);
        writer.WriteBoolean("turned180", result.Turned180);
        writer.WriteEndObject();
    }

    private static string NameOf(LossClause clause) => FormattableString.Invariant($"P{(int)clause + 1}");
}
