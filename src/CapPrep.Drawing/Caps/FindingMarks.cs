using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Caps;

/// <summary>
/// The places of findings on the cap: a box round each and its number beside it, clear of one another. Places of one
/// finding whose boxes overlap share a box.
/// </summary>
/// <param name="kept">Boxes that numbers keep off.</param>
internal sealed class FindingMarks(SheetPad pad, CapView view, IReadOnlyList<SheetBox> kept)
{
    private const int TagRadius = 260;
    private const int TagRoom = TagRadius + 60;

    private static readonly Lettering Others = Lettering.Strong(8);

    private readonly List<SheetBox> _taken = [.. kept];

    public void Draw(IEnumerable<Finding> findings)
    {
        var places = findings.SelectMany(finding => Shared(finding).Select(place => (finding.Severity, place.Box, place.Marks))).ToArray();
        foreach (var (severity, box, _) in places)
        {
            pad.Box(box, new Stroke(90, Ink.White));
            pad.Box(box, new Stroke(40, SeverityShape.InkOf(severity)));
        }

        foreach (var (severity, box, marks) in places)
            Tag(severity, box, marks);
    }

    private List<(SheetBox Box, List<int> Marks)> Shared(Finding finding)
    {
        var shared = new List<(SheetBox Box, List<int> Marks)>();
        foreach (var place in finding.Places.Where(place => place is { Mark: not null, BoxMm: not null, At: PlaceKind.CapFront }))
        {
            var (box, marks) = (view.Box(place.BoxMm!.Value).Inset(-60), new List<int> { place.Mark!.Value });
            while (shared.FindIndex(other => other.Box.Overlaps(box)) is var index && index >= 0)
            {
                (box, marks) = (box.Union(shared[index].Box), [.. shared[index].Marks, .. marks]);
                shared.RemoveAt(index);
            }

            shared.Add((box, marks));
        }

        return shared;
    }

    /// <summary>The first number in the shape of its severity, the others on a plate beside it.</summary>
    private void Tag(Severity severity, SheetBox box, List<int> marks)
    {
        var ordered = marks.Order().ToArray();
        var others = string.Join(' ', ordered.Skip(1).Select(mark => mark.ToString(CultureInfo.InvariantCulture)));
        var plate = others.Length == 0 ? 0 : TextFit.Width(others, Others.Font, Others.Size) + 100;
        var tag = FreePlace(box, (2 * TagRoom) + plate);
        _taken.Add(tag);
        SeverityShape.Draw(pad, severity, new SheetPoint(tag.X + TagRoom, tag.Center.Y), TagRadius, ordered[0]);
        if (plate == 0)
            return;
        var beside = tag.RightOf(2 * TagRoom) with { Y = tag.Center.Y - (Others.LineHeight / 2), Height = Others.LineHeight };
        pad.Box(beside, new Stroke(15, SeverityShape.InkOf(severity)), Ink.White);
        pad.Text(others, beside, Others.In(SeverityShape.InkOf(severity)), Align.Center);
    }

    /// <summary>The first of the places round the box that is inside the window and free; else the first.</summary>
    private SheetBox FreePlace(SheetBox box, int width)
    {
        var places = Around(box)
            .Select(center => new SheetBox(center.X - TagRoom, center.Y - TagRoom, width, 2 * TagRoom))
            .ToArray();
        return places.FirstOrDefault(place => view.Window.Contains(place) && !_taken.Any(place.Overlaps), places[0]);
    }

    /// <summary>Corners first, then along the edges, then farther out.</summary>
    private static IEnumerable<SheetPoint> Around(SheetBox box)
    {
        for (var ring = 0; ring < 4; ring++)
        {
            var wide = box.Inset(-(TagRadius + 80 + (ring * ((2 * TagRadius) + 120))));
            yield return new SheetPoint(wide.Right, wide.Y);
            yield return new SheetPoint(wide.X, wide.Y);
            yield return new SheetPoint(wide.Right, wide.Bottom);
            yield return new SheetPoint(wide.X, wide.Bottom);
            yield return new SheetPoint(wide.Right, wide.Center.Y);
            yield return new SheetPoint(wide.X, wide.Center.Y);
            yield return new SheetPoint(wide.Center.X, wide.Y);
            yield return new SheetPoint(wide.Center.X, wide.Bottom);
        }
    }
}
