using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Jobs;

/// <summary>Writes a person's word on a job, put together from its points.</summary>
internal static class DecisionJson
{
    /// <param name="points">Of one job, any number of decisions; each in the order in which it was said.</param>
    public static void WriteAll(Utf8JsonWriter writer, IReadOnlyList<DecisionRow> points)
    {
        writer.WriteStartArray("decisions");
        foreach (var decision in points.GroupBy(row => row.Said))
            Write(writer, [.. decision]);
        writer.WriteEndArray();
    }

    /// <param name="points">Of one decision, at least one.</param>
    public static void Write(Utf8JsonWriter writer, IReadOnlyList<DecisionRow> points)
    {
        var first = points[0];
        writer.WriteStartObject();
        writer.WriteString("id", first.Said);
        writer.WriteString("decision", Words<DecisionWord>.Standard.Of(first.Decision));
        writer.WriteString("by", first.By);
        if (first.Reason is not null)
            writer.WriteString("reason", first.Reason);
        writer.WriteString("at", Json.Time(first.At));
        WriteFindings(writer, points);
        writer.WriteNumber("ends", points.Sum(point => point.Ends));
        if (points.All(point => point.Ended is not null))
            writer.WriteString("ended", Json.Time(points.Max(point => point.Ended!.Value)));
        WriteBinding(writer, first);
        writer.WriteEndObject();
    }

    private static void WriteFindings(Utf8JsonWriter writer, IReadOnlyList<DecisionRow> points)
    {
        writer.WriteStartArray("findings");
        foreach (var finding in points.Where(point => point.Finding is not null).GroupBy(point => point.Finding!.Value).OrderBy(group => group.Key))
            WriteFinding(writer, finding.Key, [.. finding]);
        writer.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter writer, int number, DecisionRow[] points)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number", number);
        writer.WriteString("rule", points[0].Rule);
        if (points.All(point => point.Element is not null))
        {
            writer.WriteStartArray("elements");
            foreach (var element in points.Select(point => point.Element!.Value).Order())
                writer.WriteNumberValue(element);
            writer.WriteEndArray();
        }

        if (points[0].OneJob)
            writer.WriteBoolean("oneJob", true);
        writer.WriteEndObject();
    }

    private static void WriteBinding(Utf8JsonWriter writer, DecisionRow point)
    {
        writer.WriteStartObject("boundTo");
        writer.WriteString("receivedStitchesSha256", point.ReceivedStitchesSha);
        if (point.SewnStitchesSha is not null)
            writer.WriteString("sewnStitchesSha256", point.SewnStitchesSha);
        if (point.CapStyle.Length > 0)
            writer.WriteString("capStyle", point.CapStyle);
        writer.WriteString("location", point.Location);
        writer.WriteString("technique", point.Technique);
        writer.WriteEndObject();
    }
}
