using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>
/// A part of a stroke that goes up or down without turning: a stem, half a ring, a bar. All positions as on the cap.
/// </summary>
internal sealed record Limb
{
    /// <summary>Place among the limbs of its set.</summary>
    public required int Index { get; init; }

    /// <summary>Limbs of one chain follow each other without a gap.</summary>
    public required int Chain { get; init; }

    /// <summary>Its penetrations, in sewing order; more than one interval when something else was sewn in between.</summary>
    public required IReadOnlyList<Interval> Stitches { get; init; }

    public int First => Stitches[0].First;

    public int Last => Stitches[^1].Last;

    /// <summary>Corners of the smallest convex shape around its needle points.</summary>
    public required IReadOnlyList<TapePoint> Hull { get; init; }

    public required Box Box { get; init; }

    /// <summary>Middle of its box.</summary>
    public required TapePoint Center { get; init; }

    /// <summary>The end of its middle line that lies lower, twice the position.</summary>
    public required TapePoint DoubleLower { get; init; }

    /// <summary>The other end.</summary>
    public required TapePoint DoubleUpper { get; init; }

    /// <summary>Median width, sixteenths of a tape unit; 0 for a line.</summary>
    public required int Width { get; init; }

    /// <summary>From its lower to its upper end, twice as long.</summary>
    public TapePoint DoubleAxis => DoubleUpper - DoubleLower;

    /// <summary>From end to end with half a width at each, sixteenths of a tape unit.</summary>
    public long Height => (Fine.Length(DoubleAxis) / 2) + Width;

    /// <summary>Its sides run beside its axis: it shows how letters lean.</summary>
    public bool IsStraight
    {
        get
        {
            var length = Fine.Length(DoubleAxis);
            if (length == 0)
                return false;
            long left = long.MinValue, right = long.MaxValue;
            foreach (var corner in Hull)
            {
                var across = Fine.Cross(DoubleAxis, corner + corner - DoubleLower) * Fine.PerTenth * Fine.PerTenth / 2 / length;
                (left, right) = (Math.Max(left, across), Math.Min(right, across));
            }

            return 100 * (left - right) <= (140L * Width) + (12 * length / 2);
        }
    }

    /// <summary>It is longer than wide and at least 1 mm long: something that can show the height of letters.</summary>
    public bool IsTall => Fine.Length(DoubleAxis) >= 2 * Math.Max(Fine.PerMillimeter, Width);
}
