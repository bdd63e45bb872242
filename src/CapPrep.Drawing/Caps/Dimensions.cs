using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Caps;

/// <summary>Width and height of the design and its height above the brim seam, as lines with end strokes.</summary>
internal sealed class Dimensions(SheetPad pad, CapView view, LengthUnits units, Lettering set)
{
    private const int Away = 900;
    private const int EndStroke = 120;

    private readonly List<SheetBox> _plates = [];

    /// <summary>Where its figures stand.</summary>
    public IReadOnlyList<SheetBox> Plates => _plates;

    public void Size(BoxMm design)
    {
        var box = view.Box(design);
        pad.Box(box, new Stroke(15, Ink.Stone, Dash.Short));
        Horizontal(box.X, box.Right, box.Y - Away, Lengths.Of(design.Width, units));
        Vertical(box.X - Away, box.Y, box.Bottom, Lengths.Of(design.Height, units));
    }

    public void AboveBrim(BoxMm design)
    {
        var base1 = view.At(design.Left, design.Bottom);
        var brim = view.At(design.Left, 0);
        Vertical(base1.X - Away, Math.Min(base1.Y, brim.Y), Math.Max(base1.Y, brim.Y), Lengths.Of(design.Bottom, units));
    }

    private void Horizontal(int left, int right, int y, string says)
    {
        Lines([
            [new(left, y), new(right, y)],
            [new(left, y - EndStroke), new(left, y + EndStroke)],
            [new(right, y - EndStroke), new(right, y + EndStroke)],
        ]);
        Label(new SheetPoint((left + right) / 2, y), says, Align.Center);
    }

    private void Vertical(int x, int top, int bottom, string says)
    {
        Lines([
            [new(x, top), new(x, bottom)],
            [new(x - EndStroke, top), new(x + EndStroke, top)],
            [new(x - EndStroke, bottom), new(x + EndStroke, bottom)],
        ]);
        Label(new SheetPoint(x - EndStroke - 60, (top + bottom) / 2), says, Align.Right);
    }

    /// <summary>With a light edge, so that they are seen on dark cloth.</summary>
    private void Lines(IReadOnlyList<IReadOnlyList<SheetPoint>> lines)
    {
        pad.Add(new LinesMark(lines, new Stroke(70, Ink.White)));
        pad.Add(new LinesMark(lines, new Stroke(20, Ink.Black)));
    }

    /// <summary>On a white plate, so that it is read on any cloth.</summary>
    private void Label(SheetPoint at, string says, Align align)
    {
        var width = TextFit.Width(says, set.Font, set.Size) + 120;
        var left = align == Align.Center ? at.X - (width / 2) : at.X - width;
        var plate = new SheetBox(left, at.Y - (set.LineHeight / 2), width, set.LineHeight);
        _plates.Add(plate);
        pad.Box(plate, null, Ink.White);
        pad.Text(says, plate.Inset(20), set, Align.Center);
    }
}
