using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>A straight piece of thread, or an edge of a shape, tape units.</summary>
internal readonly record struct Stretch(TapePoint From, TapePoint To)
{
    /// <summary>Square of its distance from a point, tape units.</summary>
    public double DistanceSquared(TapePoint point)
    {
        var (along, away) = (To - From, point - From);
        double square = Fine.Square(along);
        var share = square == 0 ? 0 : Math.Clamp(Fine.Dot(along, away) / square, 0, 1);
        double x = away.X - (share * along.X), y = away.Y - (share * along.Y);
        return (x * x) + (y * y);
    }
}
