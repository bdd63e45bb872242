using CapPrep.Engine.Lettering;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnTicket.Colors;

/// <summary>What the thread of a block is seen against.</summary>
internal sealed class ThreadGround(Subject subject)
{
    // House: from a fifth of its area on, a thread is seen against the cap; an area half hidden is not seen.
    private const double BareShare = 0.2;
    private const double HiddenFrom = 0.5;

    // House: letters that lie on cover by so much lie on it whole.
    private const double OnCoverFrom = 0.8;

    /// <summary>A good part of the thread lies on the cap itself.</summary>
    internal bool LiesOnCap(int block)
    {
        PieceOnGround[] seen = [.. Seen(piece => piece.Block == block)];
        return seen.Sum(one => one.Area * (1 - one.OnCover)) > BareShare * seen.Sum(one => one.Area);
    }

    /// <summary>Letters that were found without doubt are sewn with it.</summary>
    internal bool IsText(int block) => LinesIn(block).Any();

    /// <summary>Blocks of the fills that the letters of a block lie on.</summary>
    internal IEnumerable<int> UnderText(int block)
    {
        var letters = LinesIn(block).SelectMany(line => line.Elements).ToHashSet();
        return Seen(piece => letters.Contains(piece.Element) && piece.Block == block)
            .Where(one => one.OnCover >= OnCoverFrom)
            .Select(one => subject.Ground[one.Piece].Below.MaxBy(below => below.Blanket.Shared(one.Piece.Blanket))?.Block)
            .OfType<int>()
            .Where(under => under != block)
            .Distinct()
            .Order();
    }

    private IEnumerable<TextLine> LinesIn(int block) => subject.TextLines.Where(line =>
        line.Sure && line.Elements.Any(element => subject.Reading.Elements[element].Block == block));

    private IEnumerable<PieceOnGround> Seen(Func<Piece, bool> wanted) => subject.Reading.Pieces
        .Where(piece => wanted(piece) && subject.Ground[piece].UnderCover < HiddenFrom)
        .Select(piece => new PieceOnGround(piece, subject.Ground[piece].OnCover));

    private sealed record PieceOnGround(Piece Piece, double OnCover)
    {
        internal int Area => Piece.Blanket.Area;
    }
}
