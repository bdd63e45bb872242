using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Curves;

/// <summary>Along and up at one place of a base line.</summary>
/// <param name="At">The place, tape units.</param>
/// <param name="AcrossX">Unit vector along the line, to the viewer's right.</param>
/// <param name="AcrossY">Its other half; up is a quarter turn counter-clockwise.</param>
/// <param name="Along">Way of the place along the line, tape units.</param>
/// <param name="Up">Height of the place over the line, tape units.</param>
/// <param name="Bend">
/// One over the radius where letters spread outward on a circle, so that what reaches far out is measured at the line;
/// 0 elsewhere: where letters stand toward the middle, their tops crowd, and measured at the line they would overlap.
/// </param>
internal readonly record struct Frame(TapePoint At, double AcrossX, double AcrossY, double Along, double Up, double Bend = 0)
{
    /// <summary>How far points reach along and up.</summary>
    /// <param name="points">At least one.</param>
    /// <param name="lean">How far letters go along for every 1,000 they go up; taken out.</param>
    public Reach ReachOf(IReadOnlyList<TapePoint> points, int lean = 0)
    {
        var slope = lean / 1000.0;
        var (from, to, bottom, top) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        for (var i = 0; i < points.Count; i++)
        {
            double x = points[i].X - At.X, y = points[i].Y - At.Y;
            var up = (y * AcrossX) - (x * AcrossY);
            var along = ((x * AcrossX) + (y * AcrossY) - (slope * (Up + up))) / (1 + Math.Max(0, Bend * (Up + up)));
            (from, to) = (Math.Min(from, along), Math.Max(to, along));
            (bottom, top) = (Math.Min(bottom, up), Math.Max(top, up));
        }

        return new(Whole(Along + from), Whole(Along + to), Whole(Up + bottom), Whole(Up + top));
    }

    /// <summary>The lowest of points; the first of equals.</summary>
    public TapePoint Lowest(IReadOnlyList<TapePoint> points)
    {
        var (lowest, least) = (points[0], double.MaxValue);
        for (var i = 0; i < points.Count; i++)
        {
            var up = (points[i].Y * AcrossX) - (points[i].X * AcrossY);
            if (up < least)
                (lowest, least) = (points[i], up);
        }

        return lowest;
    }

    /// <summary>How far a vector goes along for every 1,000 it goes up; none when it does not go up.</summary>
    public int? LeanOf(TapePoint vector)
    {
        var along = (vector.X * AcrossX) + (vector.Y * AcrossY);
        var up = (vector.Y * AcrossX) - (vector.X * AcrossY);
        return up <= 0 ? null : (int)Math.Clamp(Math.Floor((1000 * along / up) + 0.5), -10_000, 10_000);
    }

    /// <summary>Sixteenths of a tape unit.</summary>
    public static int Whole(double units) => (int)Math.Floor((units * Fine.PerTenth) + 0.5);
}

/// <summary>A limb or letter as seen from a base line, sixteenths of a tape unit.</summary>
internal readonly record struct Reach(int From, int To, int Bottom, int Top)
{
    public int Width => To - From;

    public int Height => Top - Bottom;

    public Reach Union(in Reach other) => new(
        Math.Min(From, other.From), Math.Max(To, other.To), Math.Min(Bottom, other.Bottom), Math.Max(Top, other.Top));
}
