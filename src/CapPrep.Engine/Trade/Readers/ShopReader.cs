using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

internal static class ShopReader
{
    /// <summary>Languages that card texts exist in.</summary>
    internal static readonly string[] Languages = ["en", "es", "de"];

    /// <summary>Preferred acceptance quality limits, percent (ISO 2859-1; from memory).</summary>
    private static readonly double[] Aqls =
        [0.01, 0.015, 0.025, 0.04, 0.065, 0.1, 0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5, 10];

    internal static Shop? Read(ObjectReader reader)
    {
        reader.Require("name", "defaults", "paper", "language");
        var paper = reader.Choice("paper", Words<Paper>.Standard) ?? default;
        return new()
        {
            Id = reader.Id("shop"),
            Name = reader.Text("name", 80) ?? "",
            Defaults = reader.Object("defaults", Defaults)!,
            Paper = paper,
            Units = reader.Choice("units", Words<LengthUnits>.Standard)
                ?? (paper == Paper.Letter ? LengthUnits.MmInch : LengthUnits.Mm),
            Language = reader.Word("language", Languages) ?? "",
            Inspection = reader.Object("inspection", Inspection) ?? ShopInspection.Usual,
        };
    }

    private static ShopDefaults? Defaults(ObjectReader reader)
    {
        reader.Require("machine", "framingStation", "ruleBook", "threadWeightWt");
        return new(
            reader.Id("machine") ?? "",
            reader.Id("framingStation") ?? "",
            reader.Id("ruleBook") ?? "",
            reader.Integer("threadWeightWt", 20, 100) ?? 0);
    }

    private static ShopInspection? Inspection(ObjectReader reader)
    {
        reader.Require("level", "aql");
        var level = reader.Word("level", "I", "II", "III");
        var aql = reader.Number("aql", Aqls[0], Aqls[^1]);
        if (aql is { } wanted && !Aqls.Contains(wanted))
            reader.Contradicts("aql", $"This is none of the preferred numbers: {string.Join(", ", Aqls)}.");
        return new(level ?? "", aql ?? 0);
    }
}
