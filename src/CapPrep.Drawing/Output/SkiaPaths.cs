using CapPrep.Drawing.Sheets;
using SkiaSharp;

namespace CapPrep.Drawing.Output;

/// <summary>Paths in millimeters from marks in 0.01 mm.</summary>
internal static class SkiaPaths
{
    public static float Mm(int hundredths) => hundredths / 100f;

    public static SKPoint Point(SheetPoint point) => new(Mm(point.X), Mm(point.Y));

    public static SKRect Rectangle(SheetBox box) => new(Mm(box.X), Mm(box.Y), Mm(box.Right), Mm(box.Bottom));

    public static SKPath Lines(IReadOnlyList<IReadOnlyList<SheetPoint>> lines, bool closed)
    {
        using var builder = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var line in lines)
            builder.AddPoly([.. line.Select(Point)], closed);
        return builder.Detach();
    }

    public static SKPath Box(SheetBox box)
    {
        using var builder = new SKPathBuilder();
        builder.AddRect(Rectangle(box), SKPathDirection.Clockwise);
        return builder.Detach();
    }

    public static SKPath Circle(SheetPoint center, int radius)
    {
        using var builder = new SKPathBuilder();
        builder.AddCircle(Mm(center.X), Mm(center.Y), Mm(radius), SKPathDirection.Clockwise);
        return builder.Detach();
    }

    public static SKPath Steps(IReadOnlyList<PathStep> steps)
    {
        using var builder = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var step in steps)
            Add(builder, step);
        return builder.Detach();
    }

    /// <summary>
    /// The dashes of a path as lines of their own; null for a solid line. The library would write the outline of every
    /// dash into a PDF, ten times the size.
    /// </summary>
    public static SKPath? Dashed(SKPath path, Dash dash)
    {
        if (dash == Dash.Solid)
            return null;
        var (drawn, open) = dash == Dash.Short ? (0.6f, 0.6f) : (2f, 1f);
        using var measure = new SKPathMeasure(path);
        using var builder = new SKPathBuilder();
        do
        {
            for (var step = 0; step * (drawn + open) < measure.Length; step++)
                measure.GetSegment(step * (drawn + open), (step * (drawn + open)) + drawn, builder, true);
        }
        while (measure.NextContour());
        return builder.Detach();
    }

    private static void Add(SKPathBuilder builder, PathStep step)
    {
        switch (step.Verb)
        {
            case PathVerb.Move:
                builder.MoveTo(Point(step.First));
                break;
            case PathVerb.Line:
                builder.LineTo(Point(step.First));
                break;
            case PathVerb.Curve:
                builder.CubicTo(Point(step.First), Point(step.Second), Point(step.Third));
                break;
            default:
                builder.Close();
                break;
        }
    }
}
