using CapPrep.Engine.Lettering.Limbs;
using CapPrep.Engine.Lettering.Making;
using CapPrep.Engine.Lettering.Search;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Lettering;

/// <summary>Finds the lines of letters of a seated design.</summary>
internal static class LineFinder
{
    /// <summary>Most lines of a design.</summary>
    private const int Most = 100;

    /// <summary>From the lowest line up.</summary>
    /// <param name="stitches">The penetrations.</param>
    /// <param name="reading">Its pieces and elements.</param>
    /// <param name="points">The same penetrations as they lie on the cap.</param>
    internal static IReadOnlyList<TextLine> Find(StitchSequence stitches, DesignReading reading, CapPoints points)
    {
        var visibility = new Visibility(reading);
        var found = new List<FoundLine>();
        foreach (var set in new LimbReader(stitches, reading, points).Read())
        {
            var lines = LineSearch.Find(set).Where(visibility.Shows).Select(line => new FoundLine(set, line)).ToList();
            found.AddRange(lines.Where(line => !found.Any(line.LiesOn)));
        }

        return new LineMaker(reading, points).Make(found.Take(Most));
    }
}
