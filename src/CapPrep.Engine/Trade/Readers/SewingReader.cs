using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>How a style is sewn and framed.</summary>
internal static class SewingReader
{
    internal static SewingAdvice? Sewing(ObjectReader reader)
    {
        reader.Require("speedSpm", "needle", "backing", "soften");
        return new()
        {
            SpeedSpm = Speed(reader, "speedSpm") ?? 0,
            SeamSpeedSpm = Speed(reader, "seamSpeedSpm"),
            FoamSpeedSpm = Speed(reader, "foamSpeedSpm"),
            MetallicSpeedSpm = Speed(reader, "metallicSpeedSpm"),
            Needle = reader.Text("needle", 80) ?? "",
            Backing = reader.Text("backing", 120) ?? "",
            BackingPieces = reader.Integer("backingPieces", 0, 10) ?? 1,
            BackingWidthMm = reader.Number("backingWidthMm", 10, 1000),
            BackingHeightMm = reader.Number("backingHeightMm", 10, 1000),
            Soften = reader.Flag("soften") ?? false,
            Softening = reader.Text("softening", 120),
        };
    }

    internal static FramingAdvice? Framing(ObjectReader reader)
    {
        reader.Require("secondsPerCap", "scatterMm", "centerFoundBy");
        return new(
            reader.Number("secondsPerCap", 1, 3600) ?? 0,
            reader.Number("scatterMm", 0, 20) ?? 0,
            reader.Text("centerFoundBy", 120) ?? "");
    }

    private static int? Speed(ObjectReader reader, string name) => reader.Integer(name, 100, 2000);
}
