using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>A place on a stroke.</summary>
internal readonly record struct Spot(int Stroke, double At);

/// <summary>Where the strokes of a letter meet, and the shortest way along them.</summary>
internal sealed class Nodes
{
    private readonly IReadOnlyList<Curve> _strokes;
    private readonly List<(Spot A, Spot B)> _meets = [];

    internal Nodes(IReadOnlyList<Curve> strokes, double near)
    {
        _strokes = strokes;
        for (var i = 0; i < strokes.Count; i++)
        {
            for (var j = 0; j < strokes.Count; j++)
            {
                if (i != j)
                    AddEnds(i, j, near);
                if (i < j)
                    AddCrossing(i, j);
            }
        }
    }

    internal IEnumerable<(double At, Spot Other)> On(int stroke) => _meets
        .SelectMany(meet => new[] { (meet.A, meet.B), (meet.B, meet.A) })
        .Where(meet => meet.Item1.Stroke == stroke)
        .Select(meet => (meet.Item1.At, meet.Item2))
        .OrderBy(meet => meet.At);

    /// <summary>An end of a stroke that lies inside another one is hidden there.</summary>
    internal bool EndsInside(int stroke, bool atStart)
    {
        var end = atStart ? 0 : _strokes[stroke].Length;
        return _meets.Any(meet => Is(meet.A, stroke, end) && IsInner(meet.B)) || _meets.Any(meet => Is(meet.B, stroke, end) && IsInner(meet.A));
    }

    /// <summary>The place of all strokes nearest to a wish.</summary>
    internal Spot Nearest(Vec wish) => Enumerable.Range(0, _strokes.Count)
        .SelectMany(stroke => Ends(stroke, wish).Select(at => new Spot(stroke, at)))
        .MinBy(spot => Vec.Distance(_strokes[spot.Stroke].At(spot.At), wish));

    /// <summary>Ways along strokes, each from a place to a place of one stroke; null: no way.</summary>
    internal IReadOnlyList<(int Stroke, double From, double To)>? Way(Spot from, Spot to)
    {
        var far = new Dictionary<Spot, (double Length, Spot Before)> { [from] = (0, from) };
        var done = new HashSet<Spot>();
        while (far.Where(spot => !done.Contains(spot.Key)).OrderBy(spot => spot.Value.Length).Select(spot => (Spot?)spot.Key).FirstOrDefault() is { } at)
        {
            done.Add(at);
            foreach (var (next, length) in Neighbors(at, from, to))
            {
                if (!far.TryGetValue(next, out var known) || known.Length > far[at].Length + length + 1e-9)
                    far[next] = (far[at].Length + length, at);
            }
        }

        return far.ContainsKey(to) ? Legs(far, from, to) : null;
    }

    private static List<(int Stroke, double From, double To)> Legs(Dictionary<Spot, (double Length, Spot Before)> far, Spot from, Spot to)
    {
        var legs = new List<(int Stroke, double From, double To)>();
        for (var at = to; at != from; at = far[at].Before)
        {
            var before = far[at].Before;
            if (before.Stroke != at.Stroke)
                continue;
            if (legs.Count > 0 && legs[0].Stroke == at.Stroke && legs[0].From == at.At)
                legs[0] = (at.Stroke, before.At, legs[0].To);
            else
                legs.Insert(0, (at.Stroke, before.At, at.At));
        }

        return legs.Count > 0 ? legs : [(from.Stroke, from.At, from.At)];
    }

    private IEnumerable<(Spot Next, double Length)> Neighbors(Spot at, Spot from, Spot to)
    {
        foreach (var (place, other) in On(at.Stroke))
        {
            yield return (new(at.Stroke, place), Math.Abs(place - at.At));
            if (Math.Abs(place - at.At) < 1e-9)
                yield return (other, 0);
        }

        foreach (var spot in new[] { from, to })
        {
            if (spot.Stroke == at.Stroke)
                yield return (spot, Math.Abs(spot.At - at.At));
        }
    }

    private IEnumerable<double> Ends(int stroke, Vec wish) => _strokes[stroke].IsClosed
        ? [_strokes[stroke].Nearest(wish).At]
        : [0, _strokes[stroke].Length];

    private void AddEnds(int i, int j, double near)
    {
        if (_strokes[i].IsClosed && !_strokes[j].IsClosed)
            return;
        foreach (var at in _strokes[i].IsClosed ? new[] { 0.0 } : [0.0, _strokes[i].Length])
        {
            var (other, distance) = _strokes[j].Nearest(_strokes[i].At(at));
            var isKnown = _meets.Any(meet => meet.A.Stroke == j && meet.B.Stroke == i && Math.Abs(meet.B.At - at) < near);
            if (distance < near && !isKnown)
                _meets.Add((new(i, at), new(j, Snap(_strokes[j], other, near))));
        }

        if (_strokes[i].IsClosed || !_strokes[j].IsClosed)
            return;
        AddTouch(i, j, near);
    }

    /// <summary>A bowl that touches a stem.</summary>
    private void AddTouch(int stem, int bowl, double near)
    {
        var (at, distance) = _strokes[stem].Nearest(_strokes[bowl].Start);
        if (distance < near && !_meets.Any(meet => meet.A.Stroke == stem && meet.B.Stroke == bowl))
            _meets.Add((new(stem, at), new(bowl, 0)));
    }

    private void AddCrossing(int i, int j)
    {
        if (_meets.Any(meet => (meet.A.Stroke, meet.B.Stroke) == (i, j) || (meet.A.Stroke, meet.B.Stroke) == (j, i)))
            return;
        foreach (var (a, b) in Legs(_strokes[i]))
        {
            foreach (var (c, d) in Legs(_strokes[j]))
            {
                if (Crossing(a, b, c, d) is not { } at)
                    continue;
                _meets.Add((new(i, _strokes[i].Nearest(at).At), new(j, _strokes[j].Nearest(at).At)));
                return;
            }
        }
    }

    private static IEnumerable<(Vec From, Vec To)> Legs(Curve curve) =>
        curve.Points.Zip(curve.Points.Skip(1));

    private static Vec? Crossing(Vec a, Vec b, Vec c, Vec d)
    {
        var (ab, cd, ac) = (b - a, d - c, c - a);
        var cross = Vec.Dot(ab.Left, cd);
        if (Math.Abs(cross) < 1e-9)
            return null;
        var (s, t) = (Vec.Dot(ac.Left, cd) / cross, Vec.Dot(ac.Left, ab) / cross);
        return s is >= 0 and <= 1 && t is >= 0 and <= 1 ? a + (ab * s) : null;
    }

    private static double Snap(Curve stroke, double at, double near) =>
        at < near ? 0 : at > stroke.Length - near ? stroke.Length : at;

    private static bool Is(Spot spot, int stroke, double end) => spot.Stroke == stroke && Math.Abs(spot.At - end) < 1e-6;

    private bool IsInner(Spot spot) => _strokes[spot.Stroke].IsClosed
        || (spot.At > 1e-6 && spot.At < _strokes[spot.Stroke].Length - 1e-6);
}
