using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnStitches.Columns;

/// <summary>Layers that are open on purpose, because another color shows between their rows.</summary>
internal sealed class Blends(Subject subject, double openFromMm)
{
    // House: so much of an area must lie among the rows of the other color.
    private const double SharedFrom = 0.4;

    private readonly Piece[] _open = [.. subject.Reading.Pieces.Where(piece => IsOpen(piece, subject, openFromMm))];

    /// <summary>Open rows of another thread lie over or under the piece.</summary>
    internal bool Contains(Piece piece) => piece.Blanket.Area > 0
        && piece.Blanket.SharedWithAny(_open.Where(other => ThreadOf(other) != ThreadOf(piece) && Cover.CanShare(other.Box, piece.Box)).Select(Reach))
            >= SharedFrom * piece.Blanket.Area;

    private int ThreadOf(Piece piece) => subject.Reading.Elements[piece.Element].Thread;

    private static bool IsOpen(Piece piece, Subject subject, double openFromMm) =>
        piece.Class is StitchClass.OpenFill or StitchClass.OpenZigzag
        || (piece.IsClosed && RowOpenings.OfMm(piece, subject.Stitches) > openFromMm);

    /// <summary>The cloth that an open layer takes, between its rows too.</summary>
    private static Cover Reach(Piece piece) => piece.IsClosed ? piece.Blanket : piece.Blanket.Grown().Grown();
}
