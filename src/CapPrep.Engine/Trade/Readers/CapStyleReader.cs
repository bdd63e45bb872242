using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

internal static class CapStyleReader
{
    internal static CapStyle? Read(ObjectReader reader, ReadOnlyMemory<byte> body)
    {
        reader.Require(
            "id", "name", "panels", "structure", "crownHeightMm", "circumferenceMm", "brim", "frontView", "zones",
            "sewing", "framing", "sources");
        return Blank(reader, body) with
        {
            Zones = Zones(reader),
            Techniques = reader.Has("techniques") ? reader.Choices<Technique>("techniques", 1) : [Technique.Flat],
            FoamHeightMm = reader.Number("foamHeightMm", 1, 200),
            Stiffener = reader.Text("stiffener", 120),
            MayBeWorkedWith = reader.Text("mayBeWorkedWith", 40),
            Skus = reader.Texts("skus", 500, 60) ?? [],
            CapColors = reader.Objects("capColors", 0, 200, Color) ?? [],
            SizeRange = reader.Text("sizeRange", 60),
            SupplierCrownMm = reader.Number("supplierCrownMm", 20, 300),
            Closure = reader.Word("closure", "strap", "snap", "closed", "stretch"),
            HeatSensitive = reader.Flag("heatSensitive") ?? false,
            Measured = reader.Object("measured", Measured),
            FramingSteps = reader.Ids("framingSteps", 0, 40),
            Shift = reader.Object("shift", Stiffness),
        };
    }

    private static CapStyle Blank(ObjectReader reader, ReadOnlyMemory<byte> body) => new()
    {
        Id = reader.Id("id") ?? "",
        Name = reader.Text("name", 80) ?? "",
        Panels = reader.Integer("panels", 0, 12) ?? 0,
        Structure = reader.Choice("structure", Words<CrownStructure>.Standard) ?? default,
        CrownHeightMm = reader.Number("crownHeightMm", 20, 300) ?? 0,
        CircumferenceMm = reader.Number("circumferenceMm", 400, 800) ?? 0,
        CenterSeam = reader.Object("centerSeam", Seam),
        Seams = reader.Objects("seams", 0, 20, Line) ?? [],
        Eyelets = reader.Objects("eyelets", 0, 20, Hole) ?? [],
        Brim = reader.Object("brim", BrimOf)!,
        FrontView = reader.Object("frontView", View)!,
        Zones = [],
        Sewing = reader.Object("sewing", SewingReader.Sewing)!,
        Framing = reader.Object("framing", SewingReader.Framing)!,
        Sources = reader.Sources(body),
    };

    private static IReadOnlyList<Zone> Zones(ObjectReader reader)
    {
        var zones = reader.Objects("zones", 1, Words<CapLocation>.Standard.All.Count, ZoneReader.Read) ?? [];
        if (zones.DistinctBy(zone => zone.Location).Count() < zones.Count)
            reader.Contradicts("zones", "Two zones have the same location.");
        return zones;
    }

    private static CenterSeam? Seam(ObjectReader reader)
    {
        reader.Require("halfReachMm", "layers");
        return new(
            reader.Number("halfReachMm", 0, 20) ?? 0,
            reader.Number("stepMm", 0, 30) ?? 0,
            reader.Number("grooveMm", 0, 10) ?? 0,
            reader.Integer("layers", 1, 20) ?? 0);
    }

    private static CapSeam? Line(ObjectReader reader)
    {
        reader.Require("kind", "lineMm");
        return new(reader.Word("kind", "center", "side", "top") ?? "", reader.Points("lineMm", 2, 50));
    }

    private static Eyelet? Hole(ObjectReader reader)
    {
        reader.Require("xMm", "yMm", "radiusMm");
        return new(
            reader.Number("xMm", -400, 400) ?? 0,
            reader.Number("yMm", -400, 400) ?? 0,
            reader.Number("radiusMm", 0.5, 20) ?? 0);
    }

    private static Brim? BrimOf(ObjectReader reader)
    {
        reader.Require("shape", "bowMm", "depthMm", "widthMm");
        return new(
            reader.Word("shape", "curved", "flat", "stiff") ?? "",
            reader.Number("bowMm", 0, 30) ?? 0,
            reader.Number("depthMm", 10, 200) ?? 0,
            reader.Number("widthMm", 50, 400) ?? 0);
    }

    private static FrontView? View(ObjectReader reader)
    {
        reader.Require("radiusMm", "crownSlopeDeg");
        return new(reader.Number("radiusMm", 50, 150) ?? 0, reader.Number("crownSlopeDeg", 0, 60) ?? 0);
    }

    private static NamedColor? Color(ObjectReader reader) => new(reader.Text("name", 60), reader.Color("color"));

    private static MeasuredBy? Measured(ObjectReader reader)
    {
        reader.Require("by", "date");
        return new(reader.Text("by", 60) ?? "", reader.Date("date") ?? default);
    }

    private static SheetStiffness? Stiffness(ObjectReader reader)
    {
        reader.Require("e1Fill", "e1Satin", "e2OverE1", "e1NPerMm", "e2NPerMm", "g12NPerMm", "nu12", "slackShare");
        return new(
            reader.Number("e1Fill", 0, 0.2) ?? 0,
            reader.Number("e1Satin", 0, 0.2) ?? 0,
            reader.Number("e2OverE1", 0, 2) ?? 0,
            reader.Number("e1NPerMm", 0.1, 200) ?? 0,
            reader.Number("e2NPerMm", 0.1, 200) ?? 0,
            reader.Number("g12NPerMm", 0.001, 100) ?? 0,
            reader.Number("nu12", 0, 0.49) ?? 0,
            reader.Number("slackShare", 0, 0.2) ?? 0);
    }
}
