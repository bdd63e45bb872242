namespace CapPrep.FaultCorpus.Geometry;

/// <summary>A box on the cap, mm.</summary>
public readonly record struct Rect(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public Vec Center => new((Left + Right) / 2, (Bottom + Top) / 2);

    public static Rect Of(IEnumerable<Vec> points)
    {
        var all = points as IReadOnlyCollection<Vec> ?? [.. points];
        return new(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
    }

    public static Rect Around(Vec center, double width, double height) =>
        new(center.X - (width / 2), center.Y - (height / 2), center.X + (width / 2), center.Y + (height / 2));

    public Rect Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public Rect With(Rect other) => new(
        Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    public bool Meets(Rect other) =>
        Left <= other.Right && other.Left <= Right && Bottom <= other.Top && other.Bottom <= Top;
}
