using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Cost;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>Text lines and rows of letters, put together: no element stands in two.</summary>
internal static class SewnLines
{
    // An element that reaches farther than 1 mm out of its line holds other things too.
    private const int Room = 1 * Tenths.PerMillimeter;

    /// <summary>The text lines in their order, then the rows without one.</summary>
    internal static IReadOnlyList<SewnLine> Of(Subject subject)
    {
        var lines = TextLines(subject).ToArray();
        var alone = new List<SewnLine>();
        foreach (var row in LetterRows.Of(subject))
        {
            var free = row.Elements.Where(element => !lines.Any(line => line.Own.Contains(element))).ToHashSet();
            var home = Array.FindIndex(lines, line => line.Row is null && line.Thread == row.Thread && row.Elements.Any(line.Own.Contains));
            if (home >= 0)
                lines[home] = lines[home] with { Row = row, Own = lines[home].Own.Union(free).ToHashSet() };
            else if (free.Count == row.Elements.Count())
                alone.Add(new(null, row, free));
        }

        return [.. lines, .. alone];
    }

    internal static bool LiesIn(Box element, Box line)
    {
        var room = line.Grown(Room);
        return room.Union(element) == room;
    }

    private static IEnumerable<SewnLine> TextLines(Subject subject)
    {
        var placement = Placement.Of(subject.Seated);
        var taken = new HashSet<int>();
        foreach (var line in subject.TextLines)
        {
            yield return new(line, null, line.Elements
                .Where(element => LiesIn(placement.OnCap(subject.Reading.Elements[element].Box), line.Box) && taken.Add(element))
                .ToHashSet());
        }
    }
}
