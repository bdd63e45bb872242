using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Measures;

namespace CapPrep.Drawing.Caps;

/// <summary>Slanted lines over what could not be read for sure.</summary>
internal static class DoubtHatch
{
    // Wide enough apart that the stitches below stay visible, 0.01 mm.
    private const int Apart = 130;

    private static readonly Stroke Line = new(18, Ink.Slate);

    /// <summary>One group of lines for each box.</summary>
    public static void Draw(SheetPad pad, CapView view, string title, IEnumerable<BoxMm> boxes)
    {
        foreach (var box in boxes.Select(view.Box))
            pad.Group(title, null, () => pad.Add(new LinesMark([.. Lines(box)], Line)));
    }

    /// <summary>At 45 degrees, each cut where it leaves the box; they meet those of a box beside it.</summary>
    private static IEnumerable<IReadOnlyList<SheetPoint>> Lines(SheetBox box)
    {
        var first = (box.X + box.Y + Apart) / Apart * Apart;
        for (var sum = first; sum < box.Right + box.Bottom; sum += Apart)
        {
            var left = Math.Max(box.X, sum - box.Bottom);
            var right = Math.Min(box.Right, sum - box.Y);
            yield return [new(left, sum - left), new(right, sum - right)];
        }
    }
}
