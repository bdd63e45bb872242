using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces.Lines;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>
/// Finds the pieces of a design and what may move in its sew order. Same stitches, same reading; nothing is decided
/// by which element was sewn just before another.
/// </summary>
public static class DesignReader
{
    /// <summary>Reads a design.</summary>
    /// <param name="stitches">At least one penetration.</param>
    /// <param name="threadOfBlock">
    /// A number for the thread of each received block; blocks of one thread share it. Null: every block is a thread of
    /// its own.
    /// </param>
    public static DesignReading Read(StitchSequence stitches, IReadOnlyList<int>? threadOfBlock = null)
    {
        ArgumentOutOfRangeException.ThrowIfZero(stitches.Count);
        threadOfBlock ??= [.. Enumerable.Range(1, stitches.Blocks)];
        ArgumentOutOfRangeException.ThrowIfLessThan(threadOfBlock.Count, stitches.Blocks);
        var strands = Interval.Strands(stitches);
        return TooCoarse(stitches, strands) is { } limit
            ? CoarseReading.Of(stitches, threadOfBlock, limit)
            : Finely(stitches, threadOfBlock, strands) ?? CoarseReading.Of(stitches, threadOfBlock, ReadingLimit.TooMuchToCompare);
    }

    private static ReadingLimit? TooCoarse(StitchSequence stitches, List<Interval> strands)
    {
        var box = stitches.Extents();
        return Math.Max((long)box.Right - box.Left, (long)box.Top - box.Bottom) > ReadingBounds.Side ? ReadingLimit.TooWide
            : strands.Count > ReadingBounds.Strands ? ReadingLimit.TooManyStrands
            : null;
    }

    private static DesignReading? Finely(StitchSequence stitches, IReadOnlyList<int> threadOfBlock, List<Interval> strands)
    {
        var sections = Sections(stitches, threadOfBlock, strands);
        if (sections is null)
            return null;
        var parts = StrandsOfParts(stitches, sections);
        return parts is null ? null : new ReadingMaker(stitches, threadOfBlock, sections, parts).Make();
    }

    /// <summary>Stitch character, then cover, then roles, then areas, then owners; null when out of bounds.</summary>
    private static List<Section>? Sections(StitchSequence stitches, IReadOnlyList<int> threadOfBlock, List<Interval> strands)
    {
        var byCharacter = SectionCutter.Cut(stitches, strands);
        if (byCharacter.Count > ReadingBounds.Sections || Words(stitches.Grid, byCharacter.Select(section => section.Box)) > ReadingBounds.CoverWords)
            return null;
        foreach (var section in byCharacter)
            section.Paint(stitches);
        var concealment = new Concealment(stitches, threadOfBlock, byCharacter, stitches.Extents());
        var sections = concealment.WithLinesCut(byCharacter).ToList();
        var ringed = RingFinder.In(stitches, sections, line => !concealment.Hides(line));
        if (!ReferenceEquals(ringed, sections))
        {
            concealment = new Concealment(stitches, threadOfBlock, ringed, stitches.Extents());
            sections = concealment.WithLinesCut(ringed).ToList();
        }

        concealment.Note(sections);
        RoleFinder.Assign(stitches, sections);
        PieceMerger.Merge(sections);
        return Owners.Find(sections) ? sections : null;
    }

    /// <summary>The strands in parts that may move; null when out of bounds.</summary>
    private static List<StrandParts>? StrandsOfParts(StitchSequence stitches, IReadOnlyList<Section> sections)
    {
        var strands = sections.GroupBy(section => section.Strand, (_, strand) => StrandParts.Of(stitches, [.. strand])).ToList();
        if (Words(stitches.Grid, strands.SelectMany(strand => strand.Parts).Select(part => part.Box)) > ReadingBounds.CoverWords)
            return null;
        foreach (var part in strands.SelectMany(strand => strand.Parts))
            part.Cover = stitches.CoverOf(part.Sections, part.Box);
        return [.. strands.Select(strand => Grain.Joined(stitches, strand))];
    }

    private static long Words(CellGrid grid, IEnumerable<Box> boxes) => boxes.Sum(box => CellBox.Around(grid, box).Size);
}
