namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>How the stitches are laid, wherever they lie.</summary>
internal static class StitchChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        ShortStitches.Check,
        LongStitches.Check,
        Density.Check,
    ];
}
