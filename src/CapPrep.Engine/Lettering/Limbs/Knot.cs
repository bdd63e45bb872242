using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>One step along the middle of a stroke: a row from edge to edge, or a needle point of a line.</summary>
/// <param name="One">Where the row starts, on the cap, tape units.</param>
/// <param name="Other">Where it ends.</param>
/// <param name="Stitches">Its penetrations.</param>
internal readonly record struct Knot(TapePoint One, TapePoint Other, Interval Stitches)
{
    /// <summary>Twice its middle.</summary>
    public TapePoint DoubleMiddle => One + Other;

    /// <summary>Sixteenths of a tape unit.</summary>
    public int Length => (int)Fine.Length(Other - One);
}
