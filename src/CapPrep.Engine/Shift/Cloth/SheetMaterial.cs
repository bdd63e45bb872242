using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Shift.Cloth;

/// <summary>
/// Stiffness of a cap front as a thin sheet, N/mm: force per millimeter of edge for a strain of 1, plane stress, with
/// axis 1 around the cap and axis 2 from the brim up.
/// </summary>
/// <param name="Across">Q11.</param>
/// <param name="Up">Q22.</param>
/// <param name="Coupled">Q12.</param>
/// <param name="Shear">Q66.</param>
internal readonly record struct SheetMaterial(double Across, double Up, double Coupled, double Shear)
{
    // From memory: fabric tests give a secant of 5 to 16 N/mm.
    private const double EvenNPerMm = 10;
    private const double EvenContraction = 0.2;

    /// <summary>As stiff in every direction: what is assumed of a front with buckram.</summary>
    internal static SheetMaterial Even { get; } = Isotropic(EvenNPerMm, EvenContraction);

    /// <param name="stiffness">Young's modulus times thickness, N/mm.</param>
    /// <param name="contraction">Poisson's ratio.</param>
    internal static SheetMaterial Isotropic(double stiffness, double contraction) =>
        Orthotropic(stiffness, stiffness, contraction, stiffness / (2 * (1 + contraction)));

    /// <summary>Soft cloth: little resists shear.</summary>
    internal static SheetMaterial Soft(SheetStiffness cloth) =>
        Orthotropic(cloth.E1NPerMm, cloth.E2NPerMm, cloth.Nu12, cloth.G12NPerMm);

    /// <summary>Hooke's law of an orthotropic sheet in plane stress (Jones, Mechanics of Composite Materials, section 2.6).</summary>
    internal static SheetMaterial Orthotropic(double across, double up, double contraction, double shear)
    {
        var other = contraction * up / across;
        var lost = 1 - (contraction * other);
        return new(across / lost, up / lost, contraction * up / lost, shear);
    }

    /// <summary>Force per millimeter of edge.</summary>
    internal Strain StressOf(Strain strain) => new(
        (Across * strain.Across) + (Coupled * strain.Up),
        (Coupled * strain.Across) + (Up * strain.Up),
        Shear * strain.Shear);
}
