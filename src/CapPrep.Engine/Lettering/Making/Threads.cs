using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>The stitches of letters.</summary>
internal static class Threads
{
    /// <summary>Stroke by stroke; strokes are not joined.</summary>
    public static IReadOnlyList<Stretch> Of(Letter letter, CapPoints points) =>
    [
        .. from limb in letter.Group.Limbs
           from stroke in limb.Limb.Stitches
           from i in Enumerable.Range(stroke.First, stroke.Count - 1)
           select new Stretch(points.At(i), points.At(i + 1)),
    ];
}
