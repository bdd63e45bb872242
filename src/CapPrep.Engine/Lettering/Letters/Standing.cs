using CapPrep.Engine.Lettering.Curves;
using CapPrep.Engine.Lettering.Limbs;

namespace CapPrep.Engine.Lettering.Letters;

/// <summary>A limb and how it stands on a base line.</summary>
/// <param name="Limb">The limb.</param>
/// <param name="Reach">Along and up.</param>
/// <param name="Lean">How far it goes along for every 1,000 it goes up; null when it is not tall.</param>
internal sealed record Standing(Limb Limb, Reach Reach, int? Lean);
