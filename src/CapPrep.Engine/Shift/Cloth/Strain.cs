namespace CapPrep.Engine.Shift.Cloth;

/// <summary>Plane strain or, times an area in mm2, the pull of stitches: a share of length.</summary>
/// <param name="Across">Around the cap, along x.</param>
/// <param name="Up">From the brim up, along y.</param>
/// <param name="Shear">Change of the right angle between the two.</param>
internal readonly record struct Strain(double Across, double Up, double Shear)
{
    public static Strain operator +(Strain one, Strain other) =>
        new(one.Across + other.Across, one.Up + other.Up, one.Shear + other.Shear);

    public static Strain operator *(double factor, Strain strain) =>
        new(factor * strain.Across, factor * strain.Up, factor * strain.Shear);
}
