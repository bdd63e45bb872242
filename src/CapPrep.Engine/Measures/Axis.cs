namespace CapPrep.Engine.Measures;

/// <summary>
/// The mean direction of lines without regard to their sense: a sum of vectors at the doubled angle, as long as the
/// lines are (sixteenths of a tape unit).
/// </summary>
/// <param name="X">Sum of length times cosine of the doubled angle.</param>
/// <param name="Y">Sum of length times sine of the doubled angle.</param>
/// <param name="Length">Sum of lengths.</param>
public readonly record struct Axis(long X, long Y, long Length)
{
    // Larger sums are halved before they are multiplied, so that no product leaves 64 bits.
    private const long LargestFactor = 1 << 11;

    /// <summary>No line at all.</summary>
    public static readonly Axis None = new(0, 0, 0);

    /// <summary>At least half of the lines agree on a direction: not a ring, not a scribble.</summary>
    public bool IsDirected
    {
        get
        {
            var small = Small();
            return Length > 0 && 4 * Fine.Square(small.X, small.Y) >= small.Length * small.Length;
        }
    }

    /// <summary>How well the lines agree on a direction: 100 when all are parallel, 0 for a ring.</summary>
    internal int AgreeingPercent
    {
        get
        {
            var small = Small();
            return small.Length == 0 ? 0 : (int)(100 * Fine.Length(small.X, small.Y) / (small.Length * Fine.PerTenth));
        }
    }

    /// <summary>The directions differ by less than 30 degrees.</summary>
    public bool IsWithin30Degrees(Axis other) => Agrees(other, cosineSquaredPer10000: 2500);

    /// <summary>The directions differ by less than 10 degrees.</summary>
    public bool IsWithin10Degrees(Axis other) => Agrees(other, cosineSquaredPer10000: 8830);

    /// <summary>Angle from the x axis, counter-clockwise, 0 to below 180 degrees, to 0.1 degree; 0 without lines.</summary>
    public double Degrees => Math.Round(Trig.Degrees(X, Y) / 2, 1) % 180;

    public Axis With(Axis other) => new(X + other.X, Y + other.Y, Length + other.Length);

    /// <summary>The axis of one line.</summary>
    public static Axis Of(TapePoint line)
    {
        var length = Fine.Length(line);
        if (length == 0)
            return None;
        var (x, y) = ((long)line.X, (long)line.Y);
        const long scale = Fine.PerTenth * Fine.PerTenth;
        return new(((x * x) - (y * y)) * scale / length, 2 * x * y * scale / length, length);
    }

    private bool Agrees(Axis other, long cosineSquaredPer10000)
    {
        var (a, b) = (Small(), other.Small());
        var dot = (a.X * b.X) + (a.Y * b.Y);
        return dot > 0
            && dot * dot * 10_000 >= cosineSquaredPer10000 * Fine.Square(a.X, a.Y) * Fine.Square(b.X, b.Y);
    }

    private Axis Small()
    {
        var axis = this;
        while (axis.Length > LargestFactor)
            axis = new(axis.X / 2, axis.Y / 2, axis.Length / 2);
        return axis;
    }
}
