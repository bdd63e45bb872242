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
