using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Caps;

/// <summary>Severity by shape: a hold is an octagon, a warn a triangle, a note a circle. All are paths, never letters.</summary>
internal static class SeverityShape
{
    public static Ink InkOf(Severity severity) => severity switch
    {
        Severity.Hold => Ink.Brick,
        Severity.Warn => Ink.Ocher,
        _ => Ink.Slate,
    };

    /// <param name="radius">0.01 mm.</param>
    /// <param name="number">Written inside; null: none.</param>
    public static void Draw(SheetPad pad, Severity severity, SheetPoint center, int radius, int? number)
    {
        var ink = InkOf(severity);
        if (severity == Severity.Note)
            pad.Add(new CircleMark(center, radius * 9 / 10, new Stroke(40, ink), Ink.White));
        else
            pad.Add(new PathMark(Outline(severity, center, radius), new Stroke(30, Ink.White), ink));
        if (number is not { } drawn)
            return;
        var half = severity == Severity.Warn ? radius * 6 / 10 : radius * 8 / 10;
        var room = new SheetBox(center.X - half, center.Y - radius + (severity == Severity.Warn ? radius * 3 / 10 : 0), 2 * half, 2 * radius);
        pad.Text(
            drawn.ToString(CultureInfo.InvariantCulture),
            room,
            new Lettering(SheetFont.Bold, radius * 13 / 10, radius / 2, severity == Severity.Note ? ink : Ink.White),
            Align.Center);
    }

    private static List<PathStep> Outline(Severity severity, SheetPoint center, int radius)
    {
        (int X, int Y)[] corners = severity == Severity.Hold
            ? [(-41, -100), (41, -100), (100, -41), (100, 41), (41, 100), (-41, 100), (-100, 41), (-100, -41)]
            : [(0, -125), (125, 100), (-125, 100)];
        var points = corners.Select(corner => center.Move(corner.X * radius / 100, corner.Y * radius / 100)).ToList();
        return [PathStep.Move(points[0]), .. points.Skip(1).Select(PathStep.Line), PathStep.Close()];
    }
}
