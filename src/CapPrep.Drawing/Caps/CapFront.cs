using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Caps;

/// <summary>
/// The cap itself: cloth, seams, eyelets, brim line, zone, and the frame's strap and posts. For places that are not
/// on the front only the zone is known and drawn.
/// </summary>
internal sealed class CapFront(SheetPad pad, CapView view, CapStyle style, CapFrame frame, Zone zone, Ink cloth)
{
    private bool OnFront => zone.Location is CapLocation.Front or CapLocation.FrontLeft or CapLocation.FrontRight
        or CapLocation.Wrap or CapLocation.Visor;

    private Ink Thin => cloth.Brightness > 140 ? Ink.Stone : Ink.Mist;

    public void Cloth()
    {
        if (!OnFront)
        {
            pad.Add(new ShapeMark([[.. zone.OutlineMm.Select(view.At)]], cloth));
            return;
        }

        Brim();
        pad.Add(new PathMark(Crown(), new Stroke(25, Ink.Stone), cloth));
        Strap();
    }

    public void Lines()
    {
        pad.Add(new PathMark(Closed([.. zone.OutlineMm.Select(view.At)]), new Stroke(20, Thin, Dash.Long), null));
        if (!OnFront)
            return;
        Seams();
        foreach (var eyelet in style.Eyelets)
            pad.Add(new CircleMark(view.At(eyelet.XMm, eyelet.YMm), view.Length(eyelet.RadiusMm), new Stroke(25, Thin), null));
        foreach (var post in frame.PostsXMm)
            pad.Line(view.At(post, 0), view.At(post, frame.SidesHeldBelowMm ?? zone.OutlineMm.Max(point => point.Y)), new Stroke(60, Ink.Stone, Dash.Short));
        pad.Line(view.At(-FrontHalf(), 0), view.At(FrontHalf(), 0), new Stroke(60, Ink.Black));
    }

    private void Seams()
    {
        if (style.CenterSeam is not null)
            pad.Line(view.At(0, 0), view.At(0, style.CrownHeightMm), new Stroke(35, Thin, Dash.Short));
        else
            pad.Line(view.At(0, 0), view.At(0, 6), new Stroke(35, Thin));
        foreach (var seam in style.Seams.Where(seam => seam.Kind != "center" && seam.LineMm.Count > 1))
            pad.Add(new LinesMark([[.. seam.LineMm.Select(view.At)]], new Stroke(25, Thin)));
    }

    private void Brim()
    {
        var (half, depth) = (FrontHalf(), style.Brim.DepthMm);
        pad.Add(new PathMark(
            [
                PathStep.Move(view.At(-half, 0)),
                PathStep.Curve(view.At(-half * 0.85, -depth * 1.3), view.At(half * 0.85, -depth * 1.3), view.At(half, 0)),
                PathStep.Close(),
            ],
            new Stroke(25, Ink.Stone),
            Ink.Chalk));
    }

    /// <summary>The strap covers the cloth up to its upper edge.</summary>
    private void Strap()
    {
        if (frame.Holds != FrameHold.StrapAndPosts || frame.StrapTopMm <= 0)
            return;
        pad.Box(view.Box(new BoxMm(-FrontHalf(), 0, FrontHalf(), frame.StrapTopMm)), null, Ink.Mist);
        pad.Line(view.At(-FrontHalf(), frame.StrapTopMm), view.At(FrontHalf(), frame.StrapTopMm), new Stroke(15, Ink.Stone));
    }

    /// <summary>The front between its side seams, from the brim seam to the button.</summary>
    private List<PathStep> Crown()
    {
        List<PointMm> right = [new(FrontHalf(), 0), .. SideSeam().Where(point => point.Y > 0 && point.Y < style.CrownHeightMm)];
        var end = right[^1];
        var lean = right.Count > 1 ? (end.X - right[^2].X) / Math.Max(1, end.Y - right[^2].Y) : 0;
        var rise = (style.CrownHeightMm - end.Y) / 2;
        var shoulder = new PointMm(Math.Max(0, end.X + (lean * rise)), end.Y + rise);
        var top = new PointMm(0, style.CrownHeightMm);
        var flank = new PointMm(end.X / 3, style.CrownHeightMm);
        return
        [
            PathStep.Move(view.At(Mirrored(right[0]))),
            .. right.Skip(1).Select(point => PathStep.Line(view.At(Mirrored(point)))),
            PathStep.Curve(view.At(Mirrored(shoulder)), view.At(Mirrored(flank)), view.At(top)),
            PathStep.Curve(view.At(flank), view.At(shoulder), view.At(end)),
            .. Enumerable.Reverse(right).Skip(1).Select(point => PathStep.Line(view.At(point))),
            PathStep.Close(),
        ];
    }

    private static PointMm Mirrored(PointMm point) => point with { X = -point.X };

    private double FrontHalf() => SideSeam()[0].X;

    /// <summary>The viewer's right side seam; where none is drawn in the catalog, the zone's own edge.</summary>
    private IReadOnlyList<PointMm> SideSeam()
    {
        var seam = style.Seams.FirstOrDefault(seam => seam.Kind == "side" && seam.LineMm.Count > 1 && seam.LineMm[0].X > 0);
        if (seam is not null)
            return seam.LineMm;
        var edge = zone.OutlineMm.Max(point => Math.Abs(point.X)) + 4;
        return [new PointMm(edge, 0), new PointMm(edge, zone.OutlineMm.Max(point => point.Y))];
    }

    private static List<PathStep> Closed(IReadOnlyList<SheetPoint> points) =>
        [PathStep.Move(points[0]), .. points.Skip(1).Select(PathStep.Line), PathStep.Close()];
}
