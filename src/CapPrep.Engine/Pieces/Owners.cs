using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Finds for everything hidden the area that covers most of it, and tells underlay from travel.</summary>
internal static class Owners
{
    /// <summary>
    /// Marks hidden sections with the piece that covers most of them, among equals the next one sewn. A hidden line
    /// that runs along at least half the length of that area carries it: it is underlay.
    /// </summary>
    public static void Find(IReadOnlyList<Section> sections)
    {
        var areas = sections.Where(section => section.IsClosed).ToList();
        foreach (var section in sections.Where(section => section.Role is SpanRole.Underlay or SpanRole.HiddenTravel))
            Own(section, areas);
    }

    private static void Own(Section section, IReadOnlyList<Section> areas)
    {
        var shares = areas
            .Where(area => area.Interval.First > section.Interval.Last && area.Box.Meets(section.Box))
            .GroupBy(area => area.Piece, area => (Area: area, Shared: area.Blanket.Shared(section.Cover)))
            .Select(piece => (Areas: piece, Shared: piece.Sum(part => part.Shared)))
            .ToList();
        if (shares.Count == 0)
            return;
        var owner = shares.MaxBy(piece => piece.Shared);
        section.Piece = owner.Areas.Key;
        if (section.Role == SpanRole.HiddenTravel && 2L * owner.Shared >= CellsAlong(owner.Areas.Select(part => part.Area)))
            section.Role = SpanRole.Underlay;
    }

    /// <summary>Length of an area across its rows, in cells: its size over the length of a row.</summary>
    private static long CellsAlong(IEnumerable<Section> areas) => areas.Sum(area =>
        (long)area.Blanket.Area * Fine.PerMillimeter / (Cover.CellsPerMillimeter * (long)Math.Max(1, area.Rows!.Width)));
}
