using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Curves;

/// <summary>A base line in the making.</summary>
internal abstract class Curve
{
    /// <summary>Along and up at a place.</summary>
    public abstract Frame At(TapePoint place);

    /// <summary>Height of a place over the line, tape units.</summary>
    public abstract double UpOf(TapePoint place);

    /// <summary>A point of the line by its way along it, tape units on the cap.</summary>
    public abstract (double X, double Y) PointAt(double along);
}
