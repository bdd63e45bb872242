namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>Work over foam, where the ticket says that it is; in the order of what it costs.</summary>
internal static class FoamChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        FoamOrder.NoStop,
        FoamWidths.Narrow,
        FoamEnds.Open,
        FoamGaps.Check,
        FoamWidths.Pitch,
        FoamWidths.Wide,
        FoamOrder.Fill,
        FoamOrder.ThenFlat,
        FoamPlace.Style,
        FoamEnds.OnSeam,
    ];
}
