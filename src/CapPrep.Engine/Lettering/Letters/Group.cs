using CapPrep.Engine.Lettering.Curves;

namespace CapPrep.Engine.Lettering.Letters;

/// <summary>Limbs that make one letter.</summary>
/// <param name="Limbs">In sewing order.</param>
/// <param name="Reach">Of all of them.</param>
internal sealed record Group(IReadOnlyList<Standing> Limbs, Reach Reach);
