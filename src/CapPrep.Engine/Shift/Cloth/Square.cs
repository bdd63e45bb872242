namespace CapPrep.Engine.Shift.Cloth;

/// <summary>
/// The four-node square with bilinear displacements (Zienkiewicz and Taylor, The Finite Element Method, volume 1):
/// corners in the order lower left, lower right, upper right, upper left.
/// </summary>
internal static class Square
{
    internal const int Corners = 4;
    internal const int Unknowns = 8;

    private static readonly double[] XiOf = [-1, 1, 1, -1];
    private static readonly double[] EtaOf = [-1, -1, 1, 1];

    /// <summary>Two by two points, each of weight one.</summary>
    private static readonly double Gauss = 1 / Math.Sqrt(3);

    /// <summary>How much a corner has of what happens at a point.</summary>
    internal static double ShareOf(int corner, double xi, double eta) =>
        0.25 * (1 + (XiOf[corner] * xi)) * (1 + (EtaOf[corner] * eta));

    /// <summary>Change of that share to the right, per mm.</summary>
    internal static double AcrossOf(int corner, double eta, double meshMm) =>
        0.5 * XiOf[corner] * (1 + (EtaOf[corner] * eta)) / meshMm;

    /// <summary>Change of that share upward, per mm.</summary>
    internal static double UpOf(int corner, double xi, double meshMm) =>
        0.5 * EtaOf[corner] * (1 + (XiOf[corner] * xi)) / meshMm;

    /// <summary>Stiffness of one square, N/mm, row by row; the same for every size, since the sheet is flat.</summary>
    /// <param name="material">The cloth.</param>
    /// <param name="meshMm">Edge.</param>
    /// <param name="groundNPerMm3">What the backing under it holds, per mm2 and mm of shift.</param>
    internal static double[] StiffnessOf(SheetMaterial material, double meshMm, double groundNPerMm3)
    {
        var stiffness = new double[Unknowns * Unknowns];
        var weight = meshMm * meshMm / Corners;
        foreach (var xi in (ReadOnlySpan<double>)[-Gauss, Gauss])
        {
            foreach (var eta in (ReadOnlySpan<double>)[-Gauss, Gauss])
                AddAt(stiffness, new(xi, eta, meshMm, weight), material, groundNPerMm3);
        }

        return stiffness;
    }

    private static void AddAt(double[] stiffness, Point at, SheetMaterial material, double ground)
    {
        for (var column = 0; column < Unknowns; column++)
        {
            var stress = material.StressOf(StrainOf(column, at));
            for (var row = 0; row < Unknowns; row++)
            {
                var strain = StrainOf(row, at);
                var work = (strain.Across * stress.Across) + (strain.Up * stress.Up) + (strain.Shear * stress.Shear);
                if (row % 2 == column % 2)
                    work += ground * ShareOf(row / 2, at.Xi, at.Eta) * ShareOf(column / 2, at.Xi, at.Eta);
                stiffness[(row * Unknowns) + column] += at.Weight * work;
            }
        }
    }

    /// <summary>Strain at a point when one unknown is 1 and all others are 0.</summary>
    private static Strain StrainOf(int unknown, Point at)
    {
        var (across, up) = (AcrossOf(unknown / 2, at.Eta, at.MeshMm), UpOf(unknown / 2, at.Xi, at.MeshMm));
        return unknown % 2 == 0 ? new(across, 0, up) : new(0, up, across);
    }

    private readonly record struct Point(double Xi, double Eta, double MeshMm, double Weight);
}
