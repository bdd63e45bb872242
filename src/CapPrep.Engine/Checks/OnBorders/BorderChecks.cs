namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>How borders meet their fills.</summary>
internal static class BorderChecks
{
    internal static readonly IReadOnlyList<Check> All = [LateBorder.Check, ThinBorder.Check, NarrowOverlap.Check];
}
