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
    /// <summary>From the lowest line up.</summary>
    /// <param name="stitches">The penetrations.</param>
    /// <param name="reading">Its pieces and elements.</param>
    /// <param name="points">The same penetrations as they lie on the cap.</param>
    internal static IReadOnlyList<TextLine> Find(StitchSequence stitches, DesignReading reading, CapPoints points) =>
        new LineMaker(reading).Make(
            from set in new LimbReader(stitches, reading, points).Read()
            from line in LineSearch.Find(set)
            select new FoundLine(set, line));
}
