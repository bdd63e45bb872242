using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>A piece of thread on the cap, tape units.</summary>
internal readonly record struct Thread(TapePoint From, TapePoint To)
{
    /// <summary>The stitches of a letter, strokes apart.</summary>
    public static IReadOnlyList<Thread> Of(Letter letter, CapPoints points) =>
    [
        .. from limb in letter.Group.Limbs
           from stroke in limb.Limb.Stitches
           from i in Enumerable.Range(stroke.First, stroke.Count - 1)
           select new Thread(points.At(i), points.At(i + 1)),
    ];

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
