using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>An area of parallel rows.</summary>
/// <param name="Shape">The cloth it covers.</param>
internal sealed record FillArea(Area Shape) : Part
{
    /// <summary>Direction of the rows, degrees from level; they are sewn upward from it.</summary>
    public double Degrees { get; init; }

    /// <summary>From row to row, mm (fact row L38: 0.35 to 0.45); of zigzag rows two of them.</summary>
    public double Distance { get; init; } = 0.4;

    /// <summary>Fact row L29: 3 to 5 mm.</summary>
    public double Stitch { get; init; } = 4;

    public Under Under { get; init; } = Under.Across;

    /// <summary>From line to line of the underlay, mm.</summary>
    public double UnderDistance { get; init; } = 2.6;

    /// <summary>Rows slant to and fro like a satin with needle points inside, instead of lying parallel.</summary>
    public bool ZigzagRows { get; init; }

    /// <summary>Sewn from the last row to the first.</summary>
    public bool Down { get; init; }

    public override IReadOnlyList<Dot> Dots()
    {
        var dots = new List<Dot>();
        foreach (var slant in Slants())
            dots.AddRange(Sections(Shape.Lines(slant, UnderDistance, 0.7)).SelectMany(s => Sewn(s, 3.2, Purpose.Underlay, zigzag: false)));
        var rows = Shape.Lines(Degrees, ZigzagRows ? Distance / 2 : Distance, 0);
        var sections = Sections(Down ? [.. rows.Reverse()] : rows);
        dots.AddRange(sections.SelectMany(section => Sewn(section, Stitch, Purpose.Top, ZigzagRows)));
        return WithTrims(dots);
    }

    private double[] Slants() => Under switch
    {
        Under.None => [],
        Under.Mesh => [Degrees - 45, Degrees + 45],
        _ => [Degrees + 80],
    };

    /// <summary>Runs of rows that hang together without a gap, by their first row, in it from the seam outward.</summary>
    private static IReadOnlyList<List<(Vec From, Vec To)>> Sections(IReadOnlyList<IReadOnlyList<(Vec From, Vec To)>> rows)
    {
        var all = new List<List<(Vec From, Vec To)>>();
        var open = new List<List<(Vec From, Vec To)>>();
        foreach (var row in rows.Select(pieces => pieces.OrderBy(piece => Math.Abs(piece.From.X + piece.To.X))))
        {
            var next = new List<List<(Vec From, Vec To)>>();
            foreach (var piece in row)
            {
                var fits = open.Where(section => Overlap(section[^1], piece)).ToList();
                var isAlone = fits.Count == 1 && row.Count(other => Overlap(fits[0][^1], other)) == 1;
                var section = isAlone ? fits[0] : [];
                if (!isAlone)
                    all.Add(section);
                section.Add(piece);
                next.Add(section);
            }

            open = next;
        }

        return [.. all.Where(section => section.Count > 1)];
    }

    private static bool Overlap((Vec From, Vec To) a, (Vec From, Vec To) b)
    {
        var along = (a.To - a.From).Unit;
        double P(Vec v) => Vec.Dot(v, along);
        return Math.Min(P(a.To), P(b.To)) > Math.Max(P(a.From), P(b.From));
    }

    private static IEnumerable<Dot> Sewn(List<(Vec From, Vec To)> section, double stitch, Purpose purpose, bool zigzag)
    {
        for (var row = 0; row < section.Count; row++)
        {
            var (from, to) = row % 2 == 0 ? section[row] : (section[row].To, section[row].From);
            if (!zigzag || row == 0)
                yield return new(from, SewnAs.Fill, purpose);
            foreach (var inside in Inside(from, to, stitch, row))
                yield return new(inside, SewnAs.Fill, purpose);
            yield return new(to, SewnAs.Fill, purpose);
        }
    }

    /// <summary>Needle points inside a row, offset from row to row so that they make no line, none near its ends.</summary>
    private static IEnumerable<Vec> Inside(Vec from, Vec to, double stitch, int row)
    {
        var length = Vec.Distance(from, to);
        var isBack = row % 2 == 1;
        var offset = stitch * ((row * 0.28) + 0.15 - Math.Floor((row * 0.28) + 0.15));
        var ats = new List<double>();
        for (var at = offset; at < length; at += stitch)
        {
            if (at > 1.1 && at < length - 1.1)
                ats.Add(isBack ? length - at : at);
        }

        return ats.Order().Select(at => Vec.Toward(from, to, at / length));
    }

    /// <summary>Ways to the next section: hidden where rows cover them later, else cut off.</summary>
    private List<Dot> WithTrims(List<Dot> dots)
    {
        var joined = new List<Dot>();
        foreach (var dot in dots)
        {
            var isFar = joined.Count > 0 && Vec.Distance(joined[^1].At, dot.At) > 6.5;
            var isHidden = isFar && joined[^1].Purpose == Purpose.Underlay && Shape.Holds(joined[^1].At, dot.At);
            if (isHidden)
            {
                var way = new Curve(joined[^1].At, dot.At).Steps(3).Skip(1).SkipLast(1);
                joined.AddRange(way.Select(at => new Dot(at, SewnAs.Fill, Purpose.Travel)));
            }

            joined.Add(isFar && !isHidden ? dot with { Joint = Joint.Trim } : dot);
        }

        return joined;
    }
}
