using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Drawing.Proofs;

/// <summary>
/// Where the place numbers of a small picture stand: on their elements, beside those they would hide, clear of one
/// another. The largest elements choose first, so it is the small ones that go without where there is no room.
/// </summary>
internal sealed class OrderNumbers(SmallView view, StitchSequence stitches)
{
    /// <summary>More would only make a picture gray.</summary>
    private const int Most = 40;
    private const int Clear = 25;

    /// <summary>Of an element's box, before the number stands beside it.</summary>
    private const int MostHiddenPercent = 45;

    private static readonly Lettering Set = Lettering.Strong(7);

    /// <param name="elements">Those that should carry a number.</param>
    /// <param name="says">The widest number each of them will carry.</param>
    public IReadOnlyList<(Element Element, SheetBox Plate)> Places(IEnumerable<Element> elements, Func<Element, int> says)
    {
        var placed = new List<(Element Element, SheetBox Plate)>();
        foreach (var element in elements.OrderByDescending(element => element.Penetrations).ThenBy(element => element.Index))
        {
            var number = says(element);
            var plate = Anchors(element, Plate(default, number))
                .Select(at => Plate(at, number))
                .FirstOrDefault(plate => Room.Contains(plate) && !placed.Any(other => other.Plate.Inset(-Clear).Overlaps(plate)));
            if (plate != default)
                placed.Add((element, plate));
            if (placed.Count == Most)
                break;
        }

        return placed;
    }

    /// <summary>A number on a plate that is read on any gray.</summary>
    public static void Draw(SheetPad pad, SheetBox plate, int number)
    {
        pad.Box(plate, new Stroke(12, Ink.Black), Ink.White);
        pad.Text(Text(number), plate, Set, Align.Center);
    }

    private SheetBox Room => view.Window.Inset(-SmallView.Edge);

    private IEnumerable<SheetPoint> Anchors(Element element, SheetBox plate)
    {
        var box = view.Box(element.Box);
        return (long)plate.Width * plate.Height * 100 <= MostHiddenPercent * (long)box.Width * box.Height
            ? On(element)
            : Beside(box, plate);
    }

    /// <summary>The needle point nearest to the middle of the element, then others along its way.</summary>
    private IEnumerable<SheetPoint> On(Element element)
    {
        var last = element.Penetrations - 1;
        yield return view.At(stitches.At(Middle(element)));
        foreach (var eighth in new[] { 4, 2, 6, 1, 7, 3, 5, 0, 8 })
            yield return view.At(stitches.At(element.First + (last * eighth / 8)));
    }

    /// <summary>Below, above, to the right, to the left.</summary>
    private static IEnumerable<SheetPoint> Beside(SheetBox box, SheetBox plate)
    {
        var (dx, dy) = (((box.Width + plate.Width) / 2) + Clear, ((box.Height + plate.Height) / 2) + Clear);
        return [box.Center.Move(0, dy), box.Center.Move(0, -dy), box.Center.Move(dx, 0), box.Center.Move(-dx, 0)];
    }

    private int Middle(Element element) => Enumerable.Range(element.First, element.Penetrations)
        .MinBy(point => SquaredFromMiddle(element.Box, stitches.At(point)));

    private static long SquaredFromMiddle(Box box, TapePoint point)
    {
        long dx = (2L * point.X) - box.Left - box.Right, dy = (2L * point.Y) - box.Bottom - box.Top;
        return (dx * dx) + (dy * dy);
    }

    private static SheetBox Plate(SheetPoint at, int number)
    {
        var (width, height) = (TextFit.Width(Text(number), Set.Font, Set.Size) + 90, Set.Size + 10);
        return new SheetBox(at.X - (width / 2), at.Y - (height / 2), width, height);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
