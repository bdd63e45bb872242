using CapPrep.Engine.Checks.OnTechnique.Applique;
using CapPrep.Engine.Checks.OnTechnique.Foam;
using CapPrep.Engine.Checks.OnTechnique.Metallic;

namespace CapPrep.Engine.Checks.OnTechnique;

/// <summary>Work over foam, applique and metallic thread.</summary>
internal static class TechniqueChecks
{
    internal static readonly IReadOnlyList<Check> All = [.. FoamChecks.All, .. AppliqueChecks.All, .. MetallicChecks.All];
}
