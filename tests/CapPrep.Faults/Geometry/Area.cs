namespace CapPrep.FaultCorpus.Geometry;

/// <summary>Cloth inside an outline and outside its holes.</summary>
/// <param name="Rings">Corners of the outline and of every hole; what lies inside an odd number of rings belongs to the area.</param>
public sealed record Area(IReadOnlyList<IReadOnlyList<Vec>> Rings)
{
    public Rect Box => Rect.Of(Rings[0]);

    public static Area Rectangle(Rect box) =>
        Polygon(new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top));

    public static Area Polygon(params IReadOnlyList<Vec> corners) => new([corners]);

    public static Area Of(Curve closed) => new([[.. closed.Points.Take(closed.Points.Count - 1)]]);

    public Area Without(params IReadOnlyList<Vec> hole) => new([.. Rings, hole]);

    public Area Mapped(Func<Vec, Vec> map) => new([.. Rings.Select(ring => (IReadOnlyList<Vec>)[.. ring.Select(map)])]);

    public double SizeMm2 => Rings.Select((ring, k) => (k == 0 ? 1 : -1) * Math.Abs(Signed(ring))).Sum();

    /// <summary>A straight way lies inside.</summary>
    public bool Holds(Vec from, Vec to) => Enumerable.Range(1, 19).All(k => Holds(Vec.Toward(from, to, k / 20.0)));

    public bool Holds(Vec place) => Crossings(place.Y).Xs.Count(x => x < place.X) % 2 == 1;

    /// <summary>
    /// The parts of level lines inside, line by line upward, after the area was turned so that lines at the angle lie level.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<(Vec From, Vec To)>> Lines(double degrees, double distance, double inset)
    {
        var turned = Mapped(point => point.Turned(-degrees));
        var (bottom, top) = (turned.Rings[0].Min(p => p.Y) + inset, turned.Rings[0].Max(p => p.Y) - inset);
        var count = Math.Max(1, (int)Math.Floor((top - bottom) / distance));
        return
        [
            .. Enumerable.Range(0, count + 1)
                .Select(k => bottom + ((top - bottom) * k / count))
                .Select(y => turned.Crossings(Math.Clamp(y, bottom + 1e-4, top - 1e-4)))
                .Select(xs => (IReadOnlyList<(Vec, Vec)>)[.. Pairs(xs.Xs, xs.Y, inset, degrees)]),
        ];
    }

    private static IEnumerable<(Vec From, Vec To)> Pairs(IReadOnlyList<double> xs, double y, double inset, double degrees)
    {
        for (var k = 0; k + 1 < xs.Count; k += 2)
        {
            if (xs[k + 1] - xs[k] > (2 * inset) + 0.3)
                yield return (new Vec(xs[k] + inset, y).Turned(degrees), new Vec(xs[k + 1] - inset, y).Turned(degrees));
        }
    }

    private (IReadOnlyList<double> Xs, double Y) Crossings(double y)
    {
        var xs = new List<double>();
        foreach (var ring in Rings)
        {
            for (var k = 0; k < ring.Count; k++)
            {
                var (a, b) = (ring[k], ring[(k + 1) % ring.Count]);
                if (a.Y > y != b.Y > y)
                    xs.Add(a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y)));
            }
        }

        return ([.. xs.Order()], y);
    }

    private static double Signed(IReadOnlyList<Vec> ring) => ring
        .Select((a, k) => (A: a, B: ring[(k + 1) % ring.Count]))
        .Sum(leg => ((leg.A.X * leg.B.Y) - (leg.B.X * leg.A.Y)) / 2);
}
