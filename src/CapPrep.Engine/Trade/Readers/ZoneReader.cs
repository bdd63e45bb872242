using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

internal static class ZoneReader
{
    internal static Zone? Read(ObjectReader reader)
    {
        reader.Require("location", "origin", "outlineMm", "height", "width", "brimClearance", "borderMm");
        return new()
        {
            Location = reader.Choice("location", Words<CapLocation>.Standard) ?? default,
            Origin = reader.Text("origin", 120) ?? "",
            OriginXMm = reader.Number("originXMm", -400, 400),
            OutlineMm = reader.Outline("outlineMm"),
            Height = reader.Object("height", Limits)!,
            Width = reader.Object("width", Limits)!,
            TopLine = TopLine(reader),
            BrimClearance = reader.Object("brimClearance", Clearance)!,
            BorderMm = reader.Number("borderMm", 0, 20) ?? 0,
            ArchRadiusMm = reader.Number("archRadiusMm", 10, 200),
        };
    }

    private static TwoLimits? Limits(ObjectReader reader)
    {
        reader.Require("warnAboveMm", "holdAboveMm");
        var warn = reader.Number("warnAboveMm", 1, 400);
        var hold = reader.Number("holdAboveMm", 1, 400);
        if (hold < warn)
            reader.Contradicts("holdAboveMm", "A hold comes after its warn: holdAboveMm is less than warnAboveMm.");
        return new(warn ?? 0, hold ?? 0);
    }

    private static IReadOnlyList<TopLinePoint> TopLine(ObjectReader reader)
    {
        var points = reader.Objects("topLine", 2, 50, TopLinePoint) ?? [];
        if (points.Zip(points.Skip(1)).Any(pair => pair.Second.XMm <= pair.First.XMm))
            reader.Contradicts("topLine", "The points of a top line go outward: each xMm is greater than the one before.");
        return points;
    }

    private static TopLinePoint? TopLinePoint(ObjectReader reader)
    {
        reader.Require("xMm", "warnMm", "holdMm");
        var warn = reader.Number("warnMm", 1, 300);
        var hold = reader.Number("holdMm", 1, 300);
        if (hold < warn)
            reader.Contradicts("holdMm", "A hold comes after its warn: holdMm is less than warnMm.");
        return new(reader.Number("xMm", 0, 400) ?? 0, warn ?? 0, hold ?? 0);
    }

    private static BrimClearance? Clearance(ObjectReader reader)
    {
        reader.Require("nominalMm", "warnBelowMm");
        var nominal = reader.Number("nominalMm", 0, 100);
        var floor = reader.Number("warnBelowMm", 0, 100);
        if (floor > nominal)
            reader.Contradicts("warnBelowMm", "The floor lies above the nominal clearance.");
        return new(nominal ?? 0, floor ?? 0);
    }
}
