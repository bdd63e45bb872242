using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Shift;

namespace CapPrep.Service.Results;

/// <summary>Writes what the sheet model says. Elements count from 1.</summary>
internal static class ShiftJson
{
    public static void Write(Utf8JsonWriter writer, ShiftReport? report)
    {
        writer.WriteStartObject("shift");
        writer.WriteBoolean("model", report is not null);
        if (report is not null)
            WriteReport(writer, report);
        writer.WriteEndObject();
    }

    private static void WriteReport(Utf8JsonWriter writer, ShiftReport report)
    {
        writer.WriteString("calibration", Words<ShiftCalibration>.Standard.Of(report.Calibration));
        writer.WriteNumber("driftRatio", Figures.Rounded(report.DriftRatio, 4));
        writer.WriteNumber("lowerOn", report.LowerOn);
        writer.WriteString("says", report.Says);
        writer.WriteStartArray("sheets");
        foreach (var sheet in report.Sheets)
        {
            writer.WriteStartObject();
            writer.WriteString("sheet", Words<SheetKind>.Standard.Of(sheet.Sheet));
            writer.WriteNumber("driftRatio", Figures.Rounded(sheet.DriftRatio, 4));
            writer.WriteNumber("heldRatio", Figures.Rounded(sheet.HeldRatio, 4));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        WriteShifts(writer, report.PriorShifts);
        WriteGaps(writer, report.BorderGaps);
    }

    private static void WriteShifts(Utf8JsonWriter writer, IReadOnlyList<PriorShift> shifts)
    {
        writer.WriteStartArray("priorShifts");
        foreach (var shift in shifts)
        {
            writer.WriteStartObject();
            writer.WriteNumber("element", shift.Element + 1);
            WriteRange(writer, "acrossMm", shift.Across);
            WriteRange(writer, "upMm", shift.Up);
            writer.WriteString("says", shift.Says);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteGaps(Utf8JsonWriter writer, IReadOnlyList<BorderGap> gaps)
    {
        writer.WriteStartArray("borderGaps");
        foreach (var gap in gaps)
        {
            writer.WriteStartObject();
            writer.WriteNumber("fill", gap.Fill + 1);
            writer.WriteNumber("border", gap.Border + 1);
            WriteRange(writer, "gapMm", gap.Gap);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteRange(Utf8JsonWriter writer, string name, ShiftRange range)
    {
        writer.WriteStartObject(name);
        writer.Mm("from", range.FromMm);
        writer.Mm("to", range.ToMm);
        writer.WriteEndObject();
    }
}
