using System.Text.Json.Nodes;
using CapPrep.Engine.Lettering;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What the result document says of the lines of letters on a tape.</summary>
internal static class TextLineSchemas
{
    private const int MostLines = 100;
    private const int MostElements = 1500;
    private const int MostBlocks = 200_000;
    private const double LongestMm = 10_000;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("TextLine", Line()),
        new("BaseLine", Base()),
    ];

    /// <summary>The lines of a tape.</summary>
    public static JsonObject Lines() => List(Ref("TextLine"), MostLines);

    private static JsonObject Line() => Open(
        Req("line", Integer(1, MostLines), "From the lowest line up."),
        Req("blocks", List(Integer(1, MostBlocks), MostElements), "Color blocks of the received tape."),
        Req("letters", Word<LetterMake>(), "What most letters are made of: columns, lines one stitch wide, or areas wider than columns."),
        Req("glyphs", Integer(3, int.MaxValue), "Letters, digits and signs."),
        Req("letterHeightMm", Number(0, LongestMm), "Height of the smallest letters as the customer sees them."),
        Opt("capHeightMm", Number(0, LongestMm), "Absent when all letters have one height."),
        Opt("xHeightMm", Number(0, LongestMm), "Absent when all letters have one height."),
        Req("strokeWidthMm", Number(0, LongestMm), "Median width of the strokes; 0 for running stitches."),
        Req("base", Ref("BaseLine")),
        Req("boxMm", Ref("Box")),
        Req("connected", Flag(), "The letters are joined as in handwriting."),
        Req("tagline", Flag(), "The lowest small wide line of the design."),
        Req("sure", Flag(), "False: it could be something else than letters."),
        Req("elements", List(Integer(1, MostElements), MostElements), "Elements it is sewn in; one that also holds other things is among them."));

    private static JsonObject Base() => Open(
        Req("arc", Flag(), "False: the letters stand on a straight line."),
        Req("startMm", Ref("Point"), "At the viewer's left."),
        Req("endMm", Ref("Point")),
        Opt("radiusMm", Number(0, LongestMm), "Of an arc."),
        Req("riseMm", Number(-LongestMm, LongestMm), "How far the middle lies above the straight way from start to end; below 0 where it hangs."),
        Req("tiltDeg", Number(-90, 90), "Of the straight way from start to end, counter-clockwise."),
        Req("lengthMm", Number(0, LongestMm)));
}
