namespace CapPrep.Engine.Measures;

/// <summary>
/// An axis-parallel box in tape units (0.1 mm), its edges included. A box of one point has width and height 0.
/// </summary>
public readonly record struct Box(int Left, int Bottom, int Right, int Top)
{
    public int Width => Right - Left;

    public int Height => Top - Bottom;

    /// <summary>Where a design on a cap is started: the middle of its lower edge, half a unit to the left if need be.</summary>
    public TapePoint BottomCenter => new(Left + (Width / 2), Bottom);

    public TapePoint Center => new(Left + (Width / 2), Bottom + (Height / 2));

    /// <summary>The smallest box around both.</summary>
    public Box Union(Box other) => new(
        Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom),
        Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    /// <summary>The smallest box around this one and a point.</summary>
    public Box Union(TapePoint point) => Union(Of(point));

    public bool Contains(TapePoint point) =>
        point.X >= Left && point.X <= Right && point.Y >= Bottom && point.Y <= Top;

    /// <summary>The two have a point in common.</summary>
    public bool Meets(Box other) =>
        Left <= other.Right && other.Left <= Right && Bottom <= other.Top && other.Bottom <= Top;

    /// <summary>The same box, larger by so much on every side.</summary>
    public Box Grown(int by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public Box Shift(int dx, int dy) => new(Left + dx, Bottom + dy, Right + dx, Top + dy);

    /// <summary>Turned half round about the point 0, 0.</summary>
    public Box UpsideDown() => new(-Right, -Top, -Left, -Bottom);

    /// <summary>The same box in millimeters.</summary>
    public BoxMm ToMillimeters() => new(Left / 10.0, Bottom / 10.0, Right / 10.0, Top / 10.0);

    public static Box Of(TapePoint point) => new(point.X, point.Y, point.X, point.Y);
}

/// <summary>A box in cap-front millimeters: x from the center seam to the viewer's right, y up from the brim seam.</summary>
public readonly record struct BoxMm(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;
}

/// <summary>A point in cap-front millimeters.</summary>
public readonly record struct PointMm(double X, double Y);
