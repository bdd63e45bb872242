using System.Text.Json.Nodes;
using CapPrep.Engine.Shift;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What the result document says of the sheet model.</summary>
internal static class ShiftSchemas
{
    private const int MostElements = 1500;
    private const int MostRows = 10;
    private const int SheetCount = 4;
    private const double MostTimes = 1e6;
    private const double LongestMm = 1000;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Shift", Shift()),
        new("ShiftRange", Range()),
    ];

    private static JsonObject Shift() => Open(
        Req("model", Flag(), "False: the sheet model says nothing here, and nothing else follows. True: all figures are model values, nobody measured them."),
        Opt("calibration", Word<ShiftCalibration>(), "Whether the sheet was fitted to sew-outs of this style."),
        Opt("driftRatio", Number(0, MostTimes), "How far the sewn moves afterward in the proposed order over the received one, mean of the four sheets."),
        Opt("lowerOn", Integer(0, SheetCount), "Sheets on which the proposed order moves the cloth less."),
        Opt("says", Text(200)),
        Opt("sheets", List(Open(
            Req("sheet", Word<SheetKind>(), "What is assumed of the cloth and of how it is held."),
            Req("driftRatio", Number(0, MostTimes)),
            Req("heldRatio", Number(0, MostTimes), "The same where the backing holds what is sewn.")), SheetCount)),
        Opt("priorShifts", List(Open(
            Req("element", Integer(1, MostElements)),
            Req("acrossMm", Ref("ShiftRange"), "To the right."),
            Req("upMm", Ref("ShiftRange"), "From the brim up."),
            Req("says", Text(200))), MostRows), "How far the cloth under an element has moved when it is sewn, farthest first."),
        Opt("borderGaps", List(Open(
            Req("fill", Integer(1, MostElements)),
            Req("border", Integer(1, MostElements)),
            Req("gapMm", Ref("ShiftRange"))), MostRows), "How far the cloth moves between a fill and its border, widest first."));

    private static JsonObject Range() => Open(Req("from", Number(-LongestMm, LongestMm)), Req("to", Number(-LongestMm, LongestMm)))
        .Says("Between the mildest and the strongest assumption, mm.");
}
