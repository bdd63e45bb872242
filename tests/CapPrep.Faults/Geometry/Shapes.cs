namespace CapPrep.FaultCorpus.Geometry;

/// <summary>Closed outlines, begun at the bottom and walked counter-clockwise.</summary>
public static class Shapes
{
    public static Curve Disk(Vec center, double radius) => Curve.Circle(center, radius);

    public static Curve Oval(Vec center, double width, double height) =>
        Curve.Arc(center, width / 2, height / 2, -90, 270, 96);

    /// <summary>A box with round corners.</summary>
    public static Curve Panel(Rect box, double corner)
    {
        var c = Math.Min(corner, Math.Min(box.Width, box.Height) / 2.01);
        return new(
        [
            new(box.Center.X, box.Bottom),
            .. Curve.Arc(new(box.Right - c, box.Bottom + c), c, c, -90, 0, 8).Points,
            .. Curve.Arc(new(box.Right - c, box.Top - c), c, c, 0, 90, 8).Points,
            .. Curve.Arc(new(box.Left + c, box.Top - c), c, c, 90, 180, 8).Points,
            .. Curve.Arc(new(box.Left + c, box.Bottom + c), c, c, 180, 270, 8).Points,
            new(box.Center.X, box.Bottom),
        ]);
    }

    /// <summary>A shield: level top, sides that meet in a round foot.</summary>
    public static Curve Shield(Rect box)
    {
        var right = Curve.Smooth(
            new(box.Center.X, box.Bottom), new(box.Center.X + (box.Width * 0.3), box.Bottom + (box.Height * 0.14)),
            new(box.Right - (box.Width * 0.04), box.Bottom + (box.Height * 0.5)), new(box.Right, box.Top - 2)).Points;
        var left = right.Select(p => new Vec((2 * box.Center.X) - p.X, p.Y)).Reverse();
        return new([.. right, new(box.Right - 1.5, box.Top), new(box.Left + 1.5, box.Top), .. left]);
    }

    public static Curve Star(Vec center, double radius, int points = 5, double inner = 0.5)
    {
        var corners = Enumerable.Range(0, 2 * points).Select(k =>
            Vec.OnCircle(center, k % 2 == 0 ? radius * inner : radius, -90 + (180.0 * k / points)));
        return Closed([.. corners]);
    }

    public static Curve Regular(Vec center, double radius, int corners, double from = -90) =>
        Closed([.. Enumerable.Range(0, corners).Select(k => Vec.OnCircle(center, radius, from + (360.0 * k / corners)))]);

    public static Curve Diamond(Vec center, double width, double height) => Closed(
        [center - new Vec(0, height / 2), center + new Vec(width / 2, 0), center + new Vec(0, height / 2), center - new Vec(width / 2, 0)]);

    private static Curve Closed(IReadOnlyList<Vec> corners) => new([.. corners, corners[0]]);
}
