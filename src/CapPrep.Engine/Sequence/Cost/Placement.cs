using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>How a tape lies on the cap: x = 0 is the center seam, or the middle of the zone sewn on.</summary>
/// <param name="IsTurned">Positions on the tape are turned by 180 degrees first.</param>
/// <param name="Offset">Added then, tape units.</param>
public readonly record struct Placement(bool IsTurned, TapePoint Offset)
{
    public static Placement Of(SeatedDesign seated) => new(seated.TapeIsTurned, seated.Offset);

    /// <summary>A tape position as it lies on the cap, tape units.</summary>
    public TapePoint OnCap(TapePoint onTape) => (IsTurned ? onTape.Turned() : onTape) + Offset;

    /// <summary>A box on the tape as it lies on the cap.</summary>
    public Box OnCap(Box onTape)
    {
        var (one, other) = (OnCap(new TapePoint(onTape.Left, onTape.Bottom)), OnCap(new TapePoint(onTape.Right, onTape.Top)));
        return Box.Of(one).Union(other);
    }
}
