using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Drawing.Proofs;

/// <summary>The design in grays by its sew order, with the places of what moves written into it.</summary>
internal sealed class OrderPicture
{
    private const int Tolerance = 12;
    private const int ThreadWidth = 20;
    private const int ThinnestLine = 6;

    /// <summary>From light, sewn first, to dark, sewn last; both print in black.</summary>
    private const int Lightest = 175;
    private const int Darkest = 20;

    /// <summary>Up to so many elements every one has its number, beyond only those that move.</summary>
    private const int FewElements = 12;

    /// <summary>Free round the design, 0.01 mm.</summary>
    private const int Room = 150;

    private const int PerTenth = 10;

    private static readonly Lettering Number = Lettering.Strong(6.5);

    private readonly SheetPad _pad;
    private readonly Preparation _preparation;
    private readonly StitchSequence _stitches;
    private readonly SheetBox _window;
    private readonly Box _design;

    internal OrderPicture(SheetPad pad, Preparation preparation, SheetBox window)
    {
        (_pad, _preparation, _window) = (pad, preparation, window.Inset(Room));
        _stitches = StitchSequence.Of(preparation.Tape, preparation.Setup.Machine.Tape.TrimCount);
        _design = preparation.Seating?.Box ?? preparation.Facts.Extents;
    }

    /// <param name="order">Indices of the elements in the order they are sewn.</param>
    internal void Draw(IReadOnlyList<int> order)
    {
        var width = Math.Max(ThinnestLine, Scaled(ThreadWidth) / PerTenth);
        for (var place = 0; place < order.Count; place++)
        {
            var gray = Lightest - ((Lightest - Darkest) * place / Math.Max(1, order.Count - 1));
            _pad.Add(new LinesMark([Line(_preparation.Reading.Elements[order[place]])], new Stroke(width, Ink.Gray((byte)gray))));
        }

        var taken = new List<SheetBox>();
        foreach (var (element, place) in order.Select((element, place) => (element, place)).Where(one => IsNumbered(one.element, order.Count)))
            Write(element, place + 1, taken);
    }

    private bool IsNumbered(int element, int count) =>
        count <= FewElements || _preparation.Order!.Moves.Any(move => move.Element == element);

    private void Write(int element, int place, List<SheetBox> taken)
    {
        var text = place.ToString(CultureInfo.InvariantCulture);
        var half = TextFit.Line(text, Number.Font, Number.Size, Number.Size, 2000).Width / 2;
        var box = _preparation.Reading.Elements[element].Box;
        var middle = At(OnCap(box.Center));
        var plate = new SheetBox(middle.X - half - 40, middle.Y - (Number.Size / 2), (2 * half) + 80, Number.Size);
        if (taken.Any(other => other.Overlaps(plate)))
            return;
        taken.Add(plate);
        _pad.Box(plate, null, Ink.White);
        _pad.Text(text, plate, Number, Align.Center);
    }

    private IReadOnlyList<SheetPoint> Line(Element element)
    {
        var points = new List<SheetPoint>(element.Penetrations);
        for (var i = element.First; i <= element.Last; i++)
            points.Add(At(OnCap(_stitches.At(i))));
        return Thinning.Reduce(points, Tolerance);
    }

    private SheetPoint At(TapePoint onCap) => _window.Center.Move(
        Scaled(onCap.X - _design.Center.X), -Scaled(onCap.Y - _design.Center.Y));

    /// <summary>A length of the cap in tape units as it is drawn, 0.01 mm: as large as the window takes, at most true size.</summary>
    private int Scaled(int tapeUnits)
    {
        var (wide, high) = (Math.Max(1, _design.Width) * PerTenth, Math.Max(1, _design.Height) * PerTenth);
        var (part, whole) = (long)_window.Width * high <= (long)_window.Height * wide ? (_window.Width, wide) : (_window.Height, high);
        return (int)(part >= whole ? (long)tapeUnits * PerTenth : (long)tapeUnits * PerTenth * part / whole);
    }

    private TapePoint OnCap(TapePoint point) => _preparation.Seating is { } seating ? seating.OnCap(point) : point;
}
