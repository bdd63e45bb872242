using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Checks;

namespace CapPrep.Drawing.Caps;

/// <summary>The places of findings on the cap: a box round each and its number beside it, clear of one another.</summary>
internal static class FindingMarks
{
    private const int TagRadius = 260;

    public static void Draw(SheetPad pad, CapView view, IEnumerable<Finding> findings)
    {
        var taken = new List<SheetBox>();
        foreach (var finding in findings)
            foreach (var place in finding.Places.Where(place => place is { Mark: not null, BoxMm: not null, At: PlaceKind.CapFront }))
                Draw(pad, view, finding, place, taken);
    }

    private static void Draw(SheetPad pad, CapView view, Finding finding, Place place, List<SheetBox> taken)
    {
        var box = view.Box(place.BoxMm!.Value).Inset(-60);
        pad.Box(box, new Stroke(90, Ink.White));
        pad.Box(box, new Stroke(40, SeverityShape.InkOf(finding.Severity)));
        var tag = FreePlace(view.Window, box, taken);
        taken.Add(tag);
        SeverityShape.Draw(pad, finding.Severity, tag.Center, TagRadius, place.Mark);
    }

    /// <summary>The first of the places round the box that is inside the window and free; else the first.</summary>
    private static SheetBox FreePlace(SheetBox window, SheetBox box, List<SheetBox> taken)
    {
        var places = Around(box).Select(center => new SheetBox(center.X, center.Y, 0, 0).Inset(-TagRadius - 60)).ToList();
        return places.FirstOrDefault(
            place => Inside(window, place) && !taken.Any(place.Overlaps),
            places[0]);
    }

    private static bool Inside(SheetBox window, SheetBox place) =>
        window.Contains(new SheetPoint(place.X, place.Y)) && window.Contains(new SheetPoint(place.Right, place.Bottom));

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
