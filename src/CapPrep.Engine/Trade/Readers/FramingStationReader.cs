using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

internal static class FramingStationReader
{
    internal static FramingStation? Read(ObjectReader reader, ReadOnlyMemory<byte> body)
    {
        reader.Require(
            "id", "name", "persons", "secondsPerCap", "softenSecondsPerCap", "scatter", "tolerance", "sources");
        return new()
        {
            Id = reader.Id("id") ?? "",
            Name = reader.Text("name", 80) ?? "",
            Persons = reader.Integer("persons", 1, 50) ?? 0,
            SecondsPerCap = reader.Number("secondsPerCap", 1, 3600) ?? 0,
            SoftenSecondsPerCap = reader.Number("softenSecondsPerCap", 0, 3600) ?? 0,
            Scatter = reader.Object("scatter", Scatter)!,
            ScatterByGroup = ByGroup(reader),
            Tolerance = reader.Object("tolerance", Tolerance)!,
            Language = reader.Word("language", ShopReader.Languages),
            Sources = reader.Sources(body),
        };
    }

    private static IReadOnlyList<GroupScatter> ByGroup(ObjectReader reader)
    {
        var groups = reader.Objects("scatterByGroup", 0, 100, Group) ?? [];
        if (groups.DistinctBy(group => group.Group).Count() < groups.Count)
            reader.Contradicts("scatterByGroup", "Two entries are for the same group.");
        return groups;
    }

    private static GroupScatter? Group(ObjectReader reader)
    {
        reader.Require("group");
        return new(reader.Text("group", 40) ?? "", Scatter(reader));
    }

    private static StationScatter Scatter(ObjectReader reader)
    {
        reader.Require("offsetXMm", "offsetYMm", "tiltDeg", "basis", "caps");
        return new(
            reader.Number("offsetXMm", 0, 20) ?? 0,
            reader.Number("offsetYMm", 0, 20) ?? 0,
            reader.Number("tiltDeg", 0, 20) ?? 0,
            reader.Word("basis", "house", "measured") ?? "",
            reader.Integer("caps", 0, 1_000_000) ?? 0);
    }

    private static StationTolerance? Tolerance(ObjectReader reader)
    {
        reader.Require("aimMm", "acceptMm", "customerMm", "aimDeg", "acceptDeg");
        var tolerance = new StationTolerance(
            reader.Number("aimMm", 0.1, 20) ?? 0,
            reader.Number("acceptMm", 0.1, 20) ?? double.MaxValue,
            reader.Number("customerMm", 0.1, 50) ?? double.MaxValue,
            reader.Number("aimDeg", 0.1, 20) ?? 0,
            reader.Number("acceptDeg", 0.1, 20) ?? double.MaxValue);
        if (tolerance.AimMm > tolerance.AcceptMm)
            reader.Contradicts("acceptMm", "What is accepted is less than what is aimed at.");
        if (tolerance.AcceptMm < double.MaxValue && tolerance.AcceptMm > tolerance.CustomerMm)
            reader.Contradicts("customerMm", "The customer's tolerance is less than what the station accepts.");
        if (tolerance.AimDeg > tolerance.AcceptDeg)
            reader.Contradicts("acceptDeg", "What is accepted is less than what is aimed at.");
        return tolerance;
    }
}
