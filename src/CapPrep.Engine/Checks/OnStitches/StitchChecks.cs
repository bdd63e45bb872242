using CapPrep.Engine.Checks.OnStitches.Columns;
using CapPrep.Engine.Checks.OnStitches.Ends;
using CapPrep.Engine.Checks.OnStitches.Layers;
using CapPrep.Engine.Checks.OnStitches.Load;

namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>How the stitches are laid, wherever they lie.</summary>
internal static class StitchChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        ShortStitches.Check,
        LongStitches.Check,
        NarrowColumns.Check,
        WideColumns.Check,
        Density.Check,
        CoverSpacing.Open,
        CoverSpacing.Dense,
        StackedLayers.Check,
        MissingUnderlay.Check,
        MissingTies.Check,
        LooseTravel.Check,
        HeavyDesign.Check,
    ];
}
