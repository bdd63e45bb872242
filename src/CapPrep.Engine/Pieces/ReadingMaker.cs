using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Turns strands of parts into elements, links, pairs and pieces.</summary>
internal sealed class ReadingMaker(
    StitchSequence stitches,
    IReadOnlyList<int> threadOfBlock,
    IReadOnlyList<Section> sections,
    IReadOnlyList<StrandParts> found)
{
    // Which element a penetration lies in; -1 on links.
    private readonly int[] _element = new int[stitches.Count];

    /// <summary>The reading; null when out of bounds.</summary>
    public DesignReading? Make()
    {
        var strands = ElementCap.Within(stitches, found);
        var parts = strands.SelectMany(strand => strand.Parts).ToList();
        if (parts.Count > ReadingBounds.Elements)
            return null;
        Number(parts);
        var links = Links(strands);
        var pairs = Layering.Pairs([.. parts.Select((part, index) => LayerOf(part, index, links))]);
        if (pairs is null)
            return null;
        var pieces = new PieceMaker(stitches).Make(sections, penetration => _element[penetration]);
        return new()
        {
            Elements = [.. parts.Select(Element)],
            Links = links,
            MustFollow = pairs,
            Pieces = pieces,
            Spans = [.. sections.Select(Span)],
            AssignedShare = AssignedShare(pieces),
            Limits = [.. Limits(strands)],
        };
    }

    private void Number(List<Part> parts)
    {
        _element.AsSpan().Fill(-1);
        for (var index = 0; index < parts.Count; index++)
            _element.AsSpan(parts[index].Interval.First, parts[index].Interval.Count).Fill(index);
    }

    private static List<Link> Links(IReadOnlyList<StrandParts> strands)
    {
        var links = new List<Link>();
        var element = 0;
        foreach (var strand in strands)
        {
            for (var k = 0; k < strand.Joints.Count; k++, element++)
            {
                links.Add(new(
                    element,
                    element + 1,
                    strand.Parts[k].Interval.Last + 1,
                    strand.Parts[k + 1].Interval.First - 1,
                    strand.Joints[k].IsLoose));
            }

            element++;
        }

        return links;
    }

    private Layer LayerOf(Part part, int index, List<Link> links)
    {
        var to = links.Find(link => link.After == index);
        var from = links.Find(link => link.Before == index);
        var box = stitches.BoxOf(new(to is null ? part.Interval.First : to.First - 1, from is null ? part.Interval.Last : from.Last + 1));
        return Layer.Of(stitches, part, ThreadOf(part), CoverOf(to), CoverOf(from), box);
    }

    private Cover? CoverOf(Link? link) => link is null ? null : stitches.ThreadOf(new(link.First - 1, link.Last + 1));

    private int ThreadOf(Part part) => threadOfBlock[stitches.Block[part.Interval.First] - 1];

    private Element Element(Part part, int index) => new()
    {
        Index = index,
        First = part.Interval.First,
        Last = part.Interval.Last,
        Block = stitches.Block[part.Interval.First],
        Thread = ThreadOf(part),
        Kind = part.Kind,
        Box = part.Box,
        Cover = part.Cover,
        Axis = part.Axis,
    };

    private Span Span(Section section) => new(
        section.Interval.First,
        section.Interval.Last,
        section.Class,
        section.Role,
        section.Piece < 0 ? null : section.Piece,
        _element[section.Interval.First] < 0 ? null : _element[section.Interval.First]);

    private double AssignedShare(IReadOnlyList<Piece> pieces)
    {
        var doubtful = sections.Where(section => section.Role == SpanRole.Visible && !pieces[section.Piece].Sure).Sum(section => (long)section.Interval.Count);
        return 1 - ((double)doubtful / stitches.Count);
    }

    private IEnumerable<ReadingLimit> Limits(IReadOnlyList<StrandParts> strands)
    {
        if (!ReferenceEquals(strands, found))
            yield return ReadingLimit.TooManyElements;
        if (stitches.Blocks > ReadingBounds.Blocks)
            yield return ReadingLimit.TooManyBlocks;
    }
}
