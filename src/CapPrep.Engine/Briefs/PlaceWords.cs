using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Briefs;

/// <summary>Says where a place lies: from the seam, or the middle where there is none, and from the design's base.</summary>
internal static class PlaceWords
{
    // Nearer to the seam than this nobody measures a side, mm.
    private const double OnSeam = 1;

    // A place so much wider than it is far away is told by its two ends, mm.
    private const double Wide = 20;

    /// <param name="box">On the cap, mm.</param>
    /// <param name="baseMm">Height of the design's base, mm.</param>
    /// <param name="hasSeam">The style has a center seam at x = 0.</param>
    internal static string Of(BoxMm box, double baseMm, bool hasSeam)
    {
        var middle = hasSeam ? "seam" : "middle";
        return $"{Across(box, middle)}, {Above(((box.Bottom + box.Top) / 2) - baseMm)}";
    }

    private static string Across(BoxMm box, string middle)
    {
        var center = (box.Left + box.Right) / 2;
        if (box.Width >= Wide && box.Left < -OnSeam && box.Right > OnSeam)
            return $"across the {middle}, {Whole(-box.Left)} mm to the viewer's left to {Whole(box.Right)} mm to the right";
        return Math.Abs(center) < OnSeam
            ? $"on the {middle}"
            : $"{Whole(Math.Abs(center))} mm to the viewer's {(center < 0 ? "left" : "right")} of the {middle}";
    }

    private static string Above(double heightMm) => heightMm < OnSeam
        ? "at the design's base"
        : $"{Whole(heightMm)} mm above the design's base";

    private static string Whole(double value) => Figure.Plain(value, 0);
}
