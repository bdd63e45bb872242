namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>Fabric or a patch that is laid, held and covered, where the ticket says that it is.</summary>
internal static class AppliqueChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        AppliqueStop.Check,
        AppliqueCover.Width,
        AppliqueCover.Edge,
        AppliqueTackDown.Early,
    ];
}
