using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.Ground;

/// <summary>What lies under and over each piece of a design.</summary>
internal sealed class GroundMap
{
    private readonly PieceGround[] _grounds;

    internal GroundMap(DesignReading reading)
    {
        var underlay = reading.Spans
            .Where(span => span.Role == SpanRole.Underlay && span.Piece is not null)
            .ToLookup(span => span.Piece!.Value);
        Piece[] closed = [.. reading.Pieces.Where(piece => piece.IsClosed)];
        _grounds = [.. reading.Pieces.Select(piece => Of(piece, closed, [.. underlay[piece.Index]]))];
    }

    internal PieceGround this[Piece piece] => _grounds[piece.Index];

    /// <summary>In the order of the pieces.</summary>
    internal IReadOnlyList<PieceGround> All => _grounds;

    private static PieceGround Of(Piece piece, Piece[] closed, IReadOnlyList<Span> underlay)
    {
        Piece[] met = [.. closed.Where(other => other.Index != piece.Index
            && Cover.CanShare(other.Box, piece.Box)
            && other.Blanket.Shared(piece.Blanket) > 0)];
        Piece[] below = [.. met.Where(other => other.First < piece.First)];
        Piece[] above = [.. met.Where(other => other.First > piece.First)];
        return new()
        {
            Piece = piece,
            Below = below,
            Above = above,
            Underlay = underlay,
            OnCover = ShareOf(piece, below),
            UnderCover = ShareOf(piece, above),
        };
    }

    private static double ShareOf(Piece piece, Piece[] others) => piece.Blanket.Area == 0
        ? 0
        : (double)piece.Blanket.SharedWithAny(others.Select(other => other.Blanket)) / piece.Blanket.Area;
}
