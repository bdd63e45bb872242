using CapPrep.Engine.Checks.OnStitches.Columns;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Layers;

/// <summary>
/// Columns and fills that pull the cloth together because nothing under them holds it (fact row L33): a warn on soft
/// crowns, a note on stiffened ones. Lines under it count, whoever sews them; so does earlier cover. Silent over foam.
/// </summary>
internal static class MissingUnderlay
{
    internal static readonly Check Check = new("stitch.no-underlay", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        Piece[] bare = [.. SeenAreas.Of(subject).Where(piece => NeedsUnderlay(piece, rule) && LiesBare(piece, subject, rule))];
        if (bare.Length == 0)
            return [];
        var level = subject.Setup.Style!.Structure == CrownStructure.Unstructured ? Severity.Warn : Severity.Note;
        var lines = new OpenThread(subject.Reading, subject.Stitches);
        return bare
            .Where(piece => lines.UnderMm(piece) < rule.Parameter("underlayLengthShare") * LengthMm(piece))
            .Select(piece => new Occurrence(subject.PlaceOf(piece.First, piece.Last)) { Measured = piece.Blanket.SquareMillimeters, Level = level });
    }

    private static bool NeedsUnderlay(Piece piece, RuleInForce rule) => piece.Class == StitchClass.Fill
        ? piece.Blanket.SquareMillimeters >= rule.Parameter("fillAtLeastMm2")
        : piece.WidthMm >= rule.Parameter("satinAtLeastMm") && piece.Blanket.SquareMillimeters >= rule.Parameter("satinAtLeastMm2");

    private static bool LiesBare(Piece piece, Subject subject, RuleInForce rule) =>
        !subject.Foam.Contains(piece)
        && subject.Ground[piece] is { Underlay.Count: 0 } ground
        && ground.OnCover < rule.Parameter("onCoverShare");

    /// <summary>Across its rows.</summary>
    private static double LengthMm(Piece piece) => piece.Blanket.SquareMillimeters / piece.WidthMm;

    private static string Say(Report report) =>
        $"{Figure.Count(report.WorstFirst.Count, "area is", "areas are")} sewn on bare cloth without underlay; the largest has {Figure.Plain(report.Measured, 0)} mm2.";
}
