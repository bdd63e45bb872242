using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Finds for everything hidden the area that covers most of it, and tells underlay from travel.</summary>
internal static class Owners
{
    // Shares of the length of an area, percent.
    private const int WholeLength = 90;
    private const int HalfLength = 50;

    // Ring lines are as long as their thread.
    private const int LineSpacing = 4 * Fine.PerMillimeter / 10;

    /// <summary>
    /// Marks hidden sections with the piece that covers most of them, among equals the next one sewn. A hidden line
    /// carries that area when it is about as long as the area, or half as long and leads into it or nothing else
    /// carries it.
    /// </summary>
    /// <returns>False when more would have to be compared than the bounds allow.</returns>
    public static bool Find(IReadOnlyList<Section> sections)
    {
        var areas = sections.Where(section => section.Hides && section.Role == SpanRole.Visible).ToList();
        var carriers = new List<Section>();
        var meetings = 0;
        foreach (var section in sections.Where(section => section.Role is SpanRole.Underlay or SpanRole.HiddenTravel))
        {
            var over = areas.FindAll(area => area.Interval.First > section.Interval.Last && Cover.CanShare(area.Box, section.Box));
            meetings += over.Count;
            if (meetings > ReadingBounds.Meetings)
                return false;
            var percent = Own(section, over);
            if (percent >= WholeLength)
                section.Role = SpanRole.Underlay;
            else if (percent >= HalfLength && section.Role == SpanRole.HiddenTravel)
                carriers.Add(section);
        }

        NameCarriers(sections, carriers);
        return true;
    }

    private static void NameCarriers(IReadOnlyList<Section> sections, List<Section> carriers)
    {
        var next = NextPieces(sections);
        foreach (var carrier in carriers.Where(section => next[section] == section.Piece))
            carrier.Role = SpanRole.Underlay;
        var carried = sections.Where(section => section.Role == SpanRole.Underlay).Select(section => section.Piece).ToHashSet();
        foreach (var carrier in carriers.Where(section => !carried.Contains(section.Piece)))
            carrier.Role = SpanRole.Underlay;
    }

    /// <summary>For every section the piece that is sewn next in its strand; -1 at its end.</summary>
    private static Dictionary<Section, int> NextPieces(IReadOnlyList<Section> sections)
    {
        var next = new Dictionary<Section, int>(ReferenceEqualityComparer.Instance);
        var (strand, piece) = (-1, -1);
        for (var i = sections.Count - 1; i >= 0; i--)
        {
            if (sections[i].Strand != strand)
                (strand, piece) = (sections[i].Strand, -1);
            next.Add(sections[i], piece);
            if (sections[i].Role == SpanRole.Visible)
                piece = sections[i].Piece;
        }

        return next;
    }

    /// <summary>Finds the owner.</summary>
    /// <returns>Length of the section in it as share of its own length, percent.</returns>
    private static long Own(Section section, IReadOnlyList<Section> areas)
    {
        var shares = areas
            .GroupBy(area => area.Piece, area => (Area: area, Shared: area.Blanket.Shared(section.Cover)))
            .Select(piece => (Areas: piece, Shared: piece.Sum(part => part.Shared)))
            .ToList();
        if (shares.Count == 0)
            return 0;
        var owner = shares.MaxBy(piece => piece.Shared);
        section.Piece = owner.Areas.Key;
        return 100L * owner.Shared / Math.Max(1, CellsAlong(owner.Areas.Select(part => part.Area)));
    }

    /// <summary>Length of an area across its rows, in cells: its size over the length of a row, or over the distance of ring lines.</summary>
    private static long CellsAlong(IEnumerable<Section> areas) => areas.Sum(area =>
        (long)area.Blanket.Area * Fine.PerMillimeter / (Cover.CellsPerMillimeter * (long)Math.Max(1, area.Rows?.Width ?? LineSpacing)));
}
