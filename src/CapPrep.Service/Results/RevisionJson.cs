using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Results;

/// <summary>Writes what became of the job before.</summary>
internal static class RevisionJson
{
    public static void Write(Utf8JsonWriter writer, RevisionReport report)
    {
        writer.WriteStartObject("revision");
        writer.WriteString("of", report.Of);
        writer.WriteBoolean("sameStitches", report.SameStitches);
        WritePoints(writer, "solved", report.Solved);
        WritePoints(writer, "stillOpen", report.StillOpen);
        WritePoints(writer, "newFindings", report.New);
        writer.WriteStartArray("changedOutsideTheBrief");
        foreach (var change in report.ChangedOutside)
            WriteChange(writer, change);
        writer.WriteEndArray();
        if (report.ChangesLeftOut > 0)
            writer.WriteNumber("changesLeftOut", report.ChangesLeftOut);
        writer.WriteEndObject();
    }

    private static void WritePoints(Utf8JsonWriter writer, string name, IReadOnlyList<RevisedPoint> points)
    {
        writer.WriteStartArray(name);
        foreach (var point in points)
        {
            writer.WriteStartObject();
            writer.WriteString("rule", point.Rule);
            writer.WriteString("severity", Words<Severity>.Standard.Of(point.Severity));
            if (point.Before is { } before)
                writer.WriteNumber("findingBefore", before);
            if (point.Now is { } now)
                writer.WriteNumber("finding", now);
            writer.WriteString("message", point.Message);
            writer.WriteStartArray("boxesMm");
            foreach (var box in point.BoxesMm)
                writer.BoxItem(box);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteChange(Utf8JsonWriter writer, OutsideChange change)
    {
        writer.WriteStartObject();
        writer.WriteString("what", Words<OutsideKind>.Standard.Of(change.What));
        writer.WriteString("message", change.Message);
        if (change.Element is { } element)
            writer.WriteNumber("element", element);
        if (change.BoxMm is { } box)
            writer.Box("boxMm", box);
        if (change.Stitches is { } stitches)
        {
            writer.WriteStartObject("stitches");
            writer.WriteNumber("first", stitches.First);
            writer.WriteNumber("last", stitches.Last);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }
}
