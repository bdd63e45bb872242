using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>
/// Sews the strokes of a letter in one go: out along a stroke by running stitches, which become its underlay, branches
/// first, and back over it with the column. From entry to exit the strokes are sewn forward.
/// </summary>
internal sealed class StrokeSewer
{
    private readonly IReadOnlyList<Curve> _strokes;
    private readonly Nodes _nodes;
    private readonly Face _face;
    private readonly List<Dot> _dots = [];
    private readonly HashSet<int> _begun = [];

    private StrokeSewer(IReadOnlyList<Curve> strokes, Face face)
    {
        (_strokes, _face) = (strokes, face);
        _nodes = new(strokes, 0.04 * face.Height);
    }

    internal static IReadOnlyList<Dot> Sew(IReadOnlyList<Curve> strokes, Face face, Vec entry, Vec exit)
    {
        var sewer = new StrokeSewer(strokes, face);
        sewer.SewFrom(sewer._nodes.Nearest(entry), sewer._nodes.Nearest(exit));
        sewer.SewLeftOver();
        return sewer._dots;
    }

    private void SewFrom(Spot from, Spot to)
    {
        var way = _nodes.Way(from, to) ?? [(from.Stroke, from.At, from.At)];
        _begun.UnionWith(way.Select(leg => leg.Stroke));
        foreach (var (stroke, start, end) in way)
            SewLeg(stroke, start, end);
    }

    /// <summary>Dots and accents, which hang on nothing.</summary>
    private void SewLeftOver()
    {
        for (var stroke = 0; stroke < _strokes.Count; stroke++)
        {
            if (_begun.Contains(stroke))
                continue;
            var first = _dots.Count;
            SewWhole(new(stroke, 0));
            var far = Vec.Distance(_dots[first - 1].At, _dots[first].At);
            _dots[first] = _dots[first] with { Joint = far > 2 ? Joint.Trim : Joint.Thread };
        }
    }

    private void SewLeg(int stroke, double start, double end)
    {
        var curve = _strokes[stroke];
        if (curve.IsClosed)
        {
            Run(curve.Part(start, end));
            SewWhole(new(stroke, end));
            return;
        }

        var (low, high) = start <= end ? (start, end) : (end, start);
        if (low < _face.Stroke)
            low = 0;
        if (high > curve.Length - _face.Stroke)
            high = curve.Length;
        var (from, to) = start <= end ? (low, high) : (high, low);
        if (start <= end ? from > 0 : from < curve.Length)
            SewBranch(stroke, from, start <= end ? 0 : curve.Length);
        if (Math.Abs(to - from) > 1e-6)
            SewForward(stroke, from, to);
        if (start <= end ? to < curve.Length : to > 0)
            SewBranch(stroke, to, start <= end ? curve.Length : 0);
    }

    private void SewForward(int stroke, double from, double to)
    {
        RunWithBranches(stroke, from, to);
        Run(_strokes[stroke].Part(to, from));
        Column(stroke, from, to);
    }

    private void SewBranch(int stroke, double from, double to)
    {
        RunWithBranches(stroke, from, to);
        Column(stroke, to, from);
    }

    private void SewWhole(Spot spot)
    {
        _begun.Add(spot.Stroke);
        var curve = _strokes[spot.Stroke];
        if (curve.IsClosed)
            SewLoop(spot);
        else if (spot.At < 1e-6)
            SewBranch(spot.Stroke, 0, curve.Length);
        else if (spot.At > curve.Length - 1e-6)
            SewBranch(spot.Stroke, curve.Length, 0);
        else
        {
            SewBranch(spot.Stroke, spot.At, 0);
            SewBranch(spot.Stroke, spot.At, curve.Length);
        }
    }

    private void SewLoop(Spot spot)
    {
        var loop = _strokes[spot.Stroke].From(spot.At);
        var done = 0.0;
        foreach (var (at, other) in _nodes.On(spot.Stroke).OrderBy(meet => Around(meet.At, spot)).ToList())
        {
            if (_begun.Contains(other.Stroke))
                continue;
            Run(loop.Part(done, Around(at, spot)));
            done = Around(at, spot);
            SewWhole(other);
        }

        Run(loop.Part(done, loop.Length));
        AddColumn(new([.. loop.Points, loop.At(Math.Min(0.3, loop.Length / 8))]));
    }

    private double Around(double at, Spot from) =>
        (at - from.At + (2 * _strokes[from.Stroke].Length)) % _strokes[from.Stroke].Length;

    private void RunWithBranches(int stroke, double from, double to)
    {
        var meets = _nodes.On(stroke)
            .Where(meet => meet.At >= Math.Min(from, to) - 1e-6 && meet.At <= Math.Max(from, to) + 1e-6)
            .OrderBy(meet => Math.Abs(meet.At - from))
            .ToList();
        var at = from;
        foreach (var (place, other) in meets)
        {
            if (_begun.Contains(other.Stroke))
                continue;
            Run(_strokes[stroke].Part(at, place));
            at = place;
            SewWhole(other);
        }

        Run(_strokes[stroke].Part(at, to));
    }

    private void Run(Curve way)
    {
        if (way.Points.Count < 2)
            return;
        var purpose = _face.As == SewnAs.Running ? Purpose.Top : Purpose.Underlay;
        foreach (var at in way.Steps(_face.As == SewnAs.Running ? 1.4 : 1.8))
            Add(new(at, _face.As, purpose));
    }

    private void Column(int stroke, double from, double to)
    {
        var points = _strokes[stroke].Part(from, to).Points.ToList();
        if (from < 1e-6 || from > _strokes[stroke].Length - 1e-6)
            points.Insert(0, Reached(stroke, from < 1e-6, points[0], points[1]));
        if (to < 1e-6 || to > _strokes[stroke].Length - 1e-6)
            points.Add(Reached(stroke, to < 1e-6, points[^1], points[^2]));
        AddColumn(new(points));
    }

    /// <summary>A free end reaches half a stroke farther, so that corners close and stems stand on the line.</summary>
    private Vec Reached(int stroke, bool atStart, Vec end, Vec before) =>
        _nodes.EndsInside(stroke, atStart) ? end : end + ((end - before).Unit * (_face.Stroke / 2));

    private void AddColumn(Curve path)
    {
        if (_face.As == SewnAs.Running)
        {
            Run(path);
            return;
        }

        var column = new SatinColumn(path, _face.Stroke)
        {
            Name = "",
            Pitch = _face.Pitch,
            Under = path.Length > 3 && _face.Under is Under.Zigzag or Under.Both ? Under.Zigzag : Under.None,
            Shape = _face.Tapers ? Tip : static _ => 1,
            ShortInside = _face.Tapers,
            ComesBack = false,
        };
        foreach (var dot in column.Dots())
            Add(dot with { As = _face.As });
    }

    private static double Tip(double share) => Math.Min(1, 0.45 + (4 * Math.Min(share, 1 - share)));

    private void Add(Dot dot)
    {
        if (_dots.Count == 0 || Vec.Distance(_dots[^1].At, dot.At) > 0.15)
            _dots.Add(dot);
    }
}
