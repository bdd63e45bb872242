using System.Text.Json;
using CapPrep.Engine.Briefs;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Results;

/// <summary>Writes the brief to the digitizer: the points as a list, and what holds for all of them beside it.</summary>
internal static class BriefJson
{
    public static void Write(Utf8JsonWriter writer, Brief? brief)
    {
        writer.WriteStartArray("brief");
        foreach (var point in brief?.Points ?? [])
            WritePoint(writer, point);
        writer.WriteEndArray();
        if (brief is null)
            return;
        writer.WriteStartObject("briefTerms");
        WriteCap(writer, brief.Cap);
        WriteKeep(writer, brief.Keep);
        writer.WriteNumber("pointsLeftOut", brief.LeftOut);
        writer.WriteStartArray("wantedOrder");
        foreach (var step in brief.WantedOrder)
            WriteStep(writer, step);
        writer.WriteEndArray();
        WriteBudget(writer, brief.Budget);
        writer.WriteStartArray("sendBack");
        foreach (var sentence in brief.SendBack)
            writer.WriteStringValue(sentence);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WritePoint(Utf8JsonWriter writer, BriefPoint point)
    {
        writer.WriteStartObject();
        writer.WriteNumber("step", point.Number);
        writer.WriteString("who", Words<Actor>.Standard.Of(Actor.Digitizer));
        writer.WriteNumber("finding", point.Finding);
        writer.WriteString("rule", point.Rule);
        writer.WriteBoolean("mustChange", point.MustChange);
        if (point.Places.FirstOrDefault(place => place.Mark is not null) is { } drawn)
            writer.WriteNumber("mark", drawn.Mark!.Value);
        writer.WriteString("message", point.Message);
        if (point.Measured is { } measured)
            writer.Quantity("measured", measured);
        WriteWanted(writer, point.Wanted);
        writer.WriteString("why", point.Why);
        writer.WriteString("how", point.How);
        writer.WriteNumber("count", point.Count);
        writer.WriteStartArray("places");
        foreach (var place in point.Places)
            WritePlace(writer, place);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteWanted(Utf8JsonWriter writer, BriefLimit? wanted)
    {
        if (wanted is null)
            return;
        writer.WriteStartObject("wanted");
        writer.WriteString("is", Words<LimitIs>.Standard.Of(wanted.Is));
        writer.WriteNumber("value", Figures.Rounded(wanted.Value, 4));
        writer.WriteString("unit", wanted.Unit);
        writer.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter writer, BriefPlace place)
    {
        writer.WriteStartObject();
        if (place.Mark is { } mark)
            writer.WriteNumber("mark", mark);
        writer.WriteString("words", place.Words);
        if (place.BoxMm is { } box)
            writer.Box("boxMm", box);
        writer.Numbers("blocks", place.Blocks);
        if (place.Stitches is { } stitches)
        {
            writer.WriteStartObject("stitches");
            writer.WriteNumber("first", stitches.First);
            writer.WriteNumber("last", stitches.Last);
            writer.WriteEndObject();
        }

        if (place.Measured is { } measured)
            writer.Quantity("measured", measured);
        writer.WriteEndObject();
    }

    private static void WriteCap(Utf8JsonWriter writer, BriefCap cap)
    {
        writer.WriteStartObject("cap");
        writer.Text("style", cap.Style);
        writer.WriteBoolean("centerSeam", cap.HasCenterSeam);
        if (cap.Structure is { } structure)
            writer.WriteString("structure", Words<CrownStructure>.Standard.Of(structure));
        writer.WriteString("location", Words<CapLocation>.Standard.Of(cap.Location));
        WriteMm(writer, "zoneWidthMm", cap.ZoneWidthMm);
        WriteMm(writer, "zoneHeightMm", cap.ZoneHeightMm);
        WriteMm(writer, "baseAboveBrimMm", cap.BaseAboveBrimMm);
        writer.WriteString("technique", Words<Technique>.Standard.Of(cap.Technique));
        writer.WriteNumber("threadWeightWt", cap.ThreadWeightWt);
        writer.WriteString("held", cap.Held);
        writer.WriteEndObject();
    }

    private static void WriteMm(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } millimeters)
            writer.Mm(name, millimeters);
    }

    private static void WriteKeep(Utf8JsonWriter writer, BriefKeep keep)
    {
        writer.WriteStartObject("keep");
        writer.Mm("widthMm", keep.WidthMm);
        writer.Mm("heightMm", keep.HeightMm);
        writer.Numbers("sizeMayChangeBySteps", keep.SizeMayChangeBy);
        writer.WriteNumber("colors", keep.Colors);
        writer.WriteStartArray("threads");
        foreach (var thread in keep.Threads)
        {
            writer.WriteStartObject();
            writer.WriteNumber("block", thread.Block);
            writer.Text("name", thread.Name);
            writer.Text("color", thread.Color);
            writer.Text("code", thread.Code);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteStep(Utf8JsonWriter writer, BriefStep step)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number", step.Number);
        writer.WriteString("what", step.What);
        writer.WriteNumber("block", step.Block);
        writer.Numbers("elements", step.Elements);
        writer.Box("boxMm", step.BoxMm);
        writer.WriteString("stopBefore", Words<BriefStop>.Standard.Of(step.StopBefore));
        if (step.StopBefore == BriefStop.Deliberate)
            writer.WriteString("action", Words<StopAction>.Standard.Of(step.Action));
        if (step.Letters.Count > 0)
        {
            writer.WriteStartArray("enterLettersOn");
            foreach (var letter in step.Letters)
                writer.WriteStringValue(Words<LetterEntry>.Standard.Of(letter));
            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }

    private static void WriteBudget(Utf8JsonWriter writer, BriefBudget budget)
    {
        writer.WriteStartObject("atMost");
        writer.WriteNumber("stitches", budget.Stitches);
        writer.WriteNumber("trims", budget.Trims);
        writer.WriteNumber("colorChanges", budget.ColorChanges);
        writer.WriteEndObject();
    }
}
