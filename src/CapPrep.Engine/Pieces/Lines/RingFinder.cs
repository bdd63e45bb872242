using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces.Lines;

/// <summary>
/// Finds ring lines: lines of one color block that run round and round beside each other and leave no cloth to be seen,
/// along the edge of a shape or in a spiral. The order of the lines does not matter.
/// </summary>
internal sealed class RingFinder
{
    // More lines beside others than any design has; beyond that they stay lines.
    private const int MostStretches = 400;

    private readonly StitchSequence _stitches;
    private readonly LinesBeside _beside;
    private readonly List<RingStretch> _stretches;

    private RingFinder(StitchSequence stitches, IReadOnlyList<Section> lines)
    {
        _stitches = stitches;
        _beside = LinesBeside.Of(stitches, [.. lines.Select(line => line.Interval)]);
        _stretches = [.. lines.SelectMany(Stretches)];
    }

    /// <summary>The sections, with ring lines cut out of those lines that a test lets through.</summary>
    public static List<Section> In(StitchSequence stitches, List<Section> sections, Func<Section, bool> mayBe)
    {
        var rings = sections
            .Where(section => section.Class == StitchClass.Running && mayBe(section))
            .GroupBy(section => section.Block, (_, lines) => new RingFinder(stitches, [.. lines]))
            .SelectMany(finder => finder.Rings())
            .ToLookup(part => part.Line, part => part.Rings);
        return rings.Count == 0
            ? sections
            : [.. sections.SelectMany(section => rings.Contains(section) ? Cut(stitches, section, rings[section]) : [section])];
    }

    /// <summary>The stretches of a line that have another line beside them.</summary>
    private IEnumerable<RingStretch> Stretches(Section line) =>
        Stretch.Among(_stitches, line.Interval, i => _beside.Sides(i) == 0)
            .Where(stretch => !stretch.IsMarked && stretch.Interval.Count > 1)
            .Select(stretch => new RingStretch(line, stretch.Interval, _stitches.ThreadOf(stretch.Interval)));

    private IEnumerable<(Section Line, Section Rings)> Rings() => _stretches.Count > MostStretches
        ? []
        : Shapes().Where(shape => shape.IsRings).SelectMany(shape => shape.Sections(_stitches));

    /// <summary>Stretches that lie beside each other, together; the shape of each is that of the first one it is met with.</summary>
    private IEnumerable<RingShape> Shapes()
    {
        var shape = Enumerable.Range(0, _stretches.Count).ToArray();
        Cover[] near = [.. _stretches.Select(stretch => stretch.Cover.Grown())];
        for (var one = 0; one < near.Length; one++)
        {
            for (var other = 0; other < one; other++)
            {
                if (shape[one] != shape[other] && near[one].Touches(near[other]))
                    Join(shape, shape[one], shape[other]);
            }
        }

        return _stretches
            .Zip(shape)
            .GroupBy(pair => pair.Second, pair => pair.First)
            .Select(stretches => new RingShape(_stitches, _beside, [.. stretches]));
    }

    private static void Join(int[] shape, int from, int to)
    {
        for (var k = 0; k < shape.Length; k++)
            shape[k] = shape[k] == from ? to : shape[k];
    }

    private static IEnumerable<Section> Cut(StitchSequence stitches, Section line, IEnumerable<Section> rings)
    {
        var next = line.Interval.First;
        foreach (var ring in rings.OrderBy(ring => ring.Interval.First))
        {
            if (ring.Interval.First > next)
                yield return Rest(stitches, line, new(next, ring.Interval.First - 1));
            yield return ring;
            next = ring.Interval.Last + 1;
        }

        if (next <= line.Interval.Last)
            yield return Rest(stitches, line, new(next, line.Interval.Last));
    }

    private static Section Rest(StitchSequence stitches, Section line, Interval interval)
    {
        var rest = new Section(stitches, line.Strand, interval, StitchClass.Running, null);
        rest.Paint(stitches);
        return rest;
    }
}
