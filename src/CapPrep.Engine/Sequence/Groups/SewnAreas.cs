using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>
/// Fills that are read as several elements: parts round an opening, and the lines that lie under them or lead from part
/// to part. Which of them comes first is decided by how the fill is made, not by the order of sewing.
/// </summary>
internal sealed class SewnAreas
{
    // Lines of a fill reach no farther than 1 mm out of its box (house).
    private const int Room = 1 * Tenths.PerMillimeter;

    private readonly int[] _area;
    private readonly bool[] _serves;

    private SewnAreas(int[] area, bool[] serves) => (_area, _serves) = (area, serves);

    internal static SewnAreas Of(DesignReading reading, StitchSequence stitches)
    {
        var area = Enumerable.Range(0, reading.Elements.Count).ToArray();
        var serves = new bool[area.Length];
        foreach (var strand in Strands(reading.Elements, stitches))
        {
            foreach (var fill in strand.Where(element => element.Kind == ElementKind.Fill))
            {
                var reach = fill.Cover.Grown();
                foreach (var other in strand.Where(other => other != fill))
                {
                    serves[other.Index] |= Serves(other, fill);
                    if (Serves(other, fill) || Continues(other, fill, reach))
                        Join(area, fill.Index, other.Index);
                }
            }
        }

        return new(area, serves);
    }

    /// <summary>The two are one fill, or a fill and its lines.</summary>
    internal bool AreOne(int first, int second) => _area[first] == _area[second];

    /// <summary>It only carries or leads to a fill.</summary>
    internal bool Serves(int element) => _serves[element];

    /// <summary>The elements that are one with any of these, themselves included.</summary>
    internal IEnumerable<int> All(IEnumerable<int> elements)
    {
        var areas = elements.Select(element => _area[element]).ToHashSet();
        return Enumerable.Range(0, _area.Length).Where(element => areas.Contains(_area[element]));
    }

    private static IEnumerable<List<Element>> Strands(IReadOnlyList<Element> elements, StitchSequence stitches)
    {
        var strands = Interval.Strands(stitches);
        return elements
            .GroupBy(element => strands.FindIndex(strand => strand.First <= element.First && element.First <= strand.Last))
            .Select(strand => strand.ToList())
            .Where(strand => strand.Count > 1);
    }

    private static bool Serves(Element line, Element fill)
    {
        var room = fill.Box.Grown(Room);
        return line.Kind is ElementKind.Running or ElementKind.Retraced or ElementKind.Underlay
            && room.Union(line.Box) == room;
    }

    /// <summary>Its rows lie like those of the fill and go on where those end.</summary>
    private static bool Continues(Element other, Element fill, Cover reach) =>
        other.Kind is ElementKind.Fill or ElementKind.Satin
        && other.Axis.IsWithin10Degrees(fill.Axis)
        && other.Box.Meets(fill.Box.Grown(Room))
        && reach.Shared(other.Cover) > 0;

    private static void Join(int[] area, int one, int other)
    {
        var (kept, gone) = (Math.Min(area[one], area[other]), Math.Max(area[one], area[other]));
        for (var element = 0; kept != gone && element < area.Length; element++)
        {
            if (area[element] == gone)
                area[element] = kept;
        }
    }
}
