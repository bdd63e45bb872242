using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>What is sewn under a column or a fill.</summary>
internal enum Under
{
    None,

    /// <summary>A line along the middle and back.</summary>
    Center,

    /// <summary>An open zigzag inside the edges.</summary>
    Zigzag,

    /// <summary>The middle, then the zigzag.</summary>
    Both,

    /// <summary>Open lines across the rows of a fill.</summary>
    Across,

    /// <summary>Open lines in both slants.</summary>
    Mesh,
}

/// <summary>A column of stitches from edge to edge along a line.</summary>
/// <param name="Path">Its middle.</param>
/// <param name="Width">Length of its stitches, mm.</param>
internal sealed record SatinColumn(Curve Path, double Width) : Part
{
    /// <summary>From needle point to needle point on one edge, mm (fact row L35: 0.40).</summary>
    public double Pitch { get; init; } = 0.4;

    public Under Under { get; init; } = Under.Center;

    /// <summary>The underlay runs ahead and the column comes back over it: it ends where it began.</summary>
    public bool ComesBack { get; init; }

    /// <summary>Width at a share of the length, as a share of <see cref="Width"/>.</summary>
    public Func<double, double> Shape { get; init; } = static _ => 1;

    /// <summary>Stitches longer than this get a needle point inside, mm.</summary>
    public double SplitAbove { get; init; } = 12;

    /// <summary>Every second stitch of the inner side of a bend ends short of the edge.</summary>
    public bool ShortInside { get; init; }

    /// <summary>How far the edges move along the path, mm of the path per mm to the left: stitches lie aslant.</summary>
    public double Slant { get; init; }

    public override IReadOnlyList<Dot> Dots()
    {
        var path = ComesBack ? Path.Backward() : Path;
        return [.. Underlay().Select(at => new Dot(at, SewnAs.Satin, Purpose.Underlay)), .. Rows(path).Select(at => new Dot(at, SewnAs.Satin))];
    }

    private IEnumerable<Vec> Underlay()
    {
        var inner = Path.Length > 2 ? Path.Part(0.5, Path.Length - 0.5) : Path;
        IEnumerable<Vec> center = inner.Steps(2);
        IEnumerable<Vec> back = inner.Backward().Steps(2);
        IEnumerable<Vec> zigzag = Zigzag(inner, Math.Max(0.4, Width - 1.2));
        return Under switch
        {
            Under.None => [],
            Under.Center => ComesBack ? center : [.. center, .. back],
            Under.Zigzag => ComesBack ? zigzag : [.. center, .. zigzag.Reverse()],
            _ => ComesBack ? [.. center, .. back, .. zigzag] : [.. center, .. zigzag.Reverse()],
        };
    }

    private static IEnumerable<Vec> Zigzag(Curve path, double width)
    {
        var count = Math.Max(2, (int)(path.Length / 1.1));
        return Enumerable.Range(0, count + 1).Select(k =>
        {
            var at = Math.Clamp(path.Length * k / count, 1e-6, path.Length - 1e-6);
            return path.At(at) + (path.Direction(at).Left * (k % 2 == 0 ? width / 2 : -width / 2));
        });
    }

    private IEnumerable<Vec> Rows(Curve path)
    {
        var count = Math.Max(3, (int)Math.Round(2 * path.Length / Pitch));
        var before = path.Start;
        for (var k = 0; k <= count; k++)
        {
            var at = Edge(path, path.Length * k / count, k);
            if (k > 0)
            {
                foreach (var inside in Split(before, at, k))
                    yield return inside;
            }

            yield return at;
            before = at;
        }
    }

    private Vec Edge(Curve path, double length, int row)
    {
        var side = row % 2 == 0 ? 1 : -1;
        var half = side * Width * Shape(Share(path, length)) / 2;
        var at = Math.Clamp(length + (half * Slant), 1e-6, path.Length - 1e-6);
        var left = path.Direction(at).Left;
        if (ShortInside && row % 4 >= 2 && IsInside(path, at, side))
            half *= 0.6;
        return path.At(at) + (left * half);
    }

    private double Share(Curve path, double length) =>
        ComesBack && path != Path ? 1 - (length / path.Length) : length / path.Length;

    private static bool IsInside(Curve path, double at, int side)
    {
        var before = path.Direction(Math.Max(1e-6, at - 0.5));
        var after = path.Direction(Math.Min(path.Length - 1e-6, at + 0.5));
        return Vec.Dot(before.Left, after) * side > 0.03;
    }

    private IEnumerable<Vec> Split(Vec from, Vec to, int row)
    {
        var pieces = (int)Math.Ceiling(Vec.Distance(from, to) / SplitAbove);
        return Enumerable.Range(1, Math.Max(0, pieces - 1))
            .Select(k => Vec.Toward(from, to, Math.Clamp((k + ((row % 4) - 1.5) * 0.12) / pieces, 0.05, 0.95)));
    }
}
