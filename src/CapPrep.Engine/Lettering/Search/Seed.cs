using CapPrep.Engine.Lettering.Curves;

namespace CapPrep.Engine.Lettering.Search;

/// <summary>A base line that two or three limbs would stand on.</summary>
/// <param name="Curve">The line.</param>
/// <param name="Height">Height of the tallest of these limbs, sixteenths of a tape unit.</param>
/// <param name="Limb">Index of the leftmost of them.</param>
internal sealed record Seed(Curve Curve, int Height, int Limb);
