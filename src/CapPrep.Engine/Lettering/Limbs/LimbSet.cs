namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>Limbs of one thread and one make, in sewing order.</summary>
internal sealed record LimbSet(int Thread, LetterMake Make, IReadOnlyList<Limb> Limbs);
