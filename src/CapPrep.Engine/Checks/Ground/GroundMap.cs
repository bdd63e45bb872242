using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.Ground;

/// <summary>
/// What lies under and over each piece of a design. Where more areas meet than can be compared, every piece counts as
/// lying between others, so that no rule speaks of bare cloth that may not be bare.
/// </summary>
internal sealed class GroundMap
{
    // Many times what a real design has.
    private const int MostMeetings = 200_000;

    private readonly PieceGround[] _grounds;

    internal GroundMap(DesignReading reading)
    {
        var underlay = reading.Spans
            .Where(span => span.Role == SpanRole.Underlay && span.Piece is not null)
            .ToLookup(span => span.Piece!.Value);
        var met = Meetings(reading.Pieces);
        _grounds = [.. reading.Pieces.Select(piece => met is null
            ? Unknown(piece, [.. underlay[piece.Index]])
            : Of(piece, met[piece.Index], [.. underlay[piece.Index]]))];
    }

    internal PieceGround this[Piece piece] => _grounds[piece.Index];

    /// <summary>In the order of the pieces.</summary>
    internal IReadOnlyList<PieceGround> All => _grounds;

    /// <summary>The closed pieces that share cells with each piece; null when there are too many to look at.</summary>
    private static List<Piece>[]? Meetings(IReadOnlyList<Piece> pieces)
    {
        var met = pieces.Select(_ => new List<Piece>()).ToArray();
        var count = 0;
        foreach (var (one, other) in Near([.. pieces.OrderBy(piece => piece.Box.Left)]))
        {
            if (++count > MostMeetings)
                return null;
            if (!(one.IsClosed || other.IsClosed) || one.Blanket.Shared(other.Blanket) == 0)
                continue;
            if (other.IsClosed)
                met[one.Index].Add(other);
            if (one.IsClosed)
                met[other.Index].Add(one);
        }

        return met;
    }

    /// <summary>Pairs whose boxes can share a cell.</summary>
    private static IEnumerable<(Piece One, Piece Other)> Near(Piece[] fromLeft)
    {
        for (var i = 0; i < fromLeft.Length; i++)
        {
            for (var k = i + 1; k < fromLeft.Length && fromLeft[k].Box.Left <= fromLeft[i].Box.Right + CellGrid.Reach; k++)
            {
                if (Cover.CanShare(fromLeft[i].Box, fromLeft[k].Box))
                    yield return (fromLeft[i], fromLeft[k]);
            }
        }
    }

    private static PieceGround Of(Piece piece, List<Piece> met, IReadOnlyList<Span> underlay)
    {
        Piece[] below = [.. met.Where(other => other.First < piece.First).OrderBy(other => other.First)];
        Piece[] above = [.. met.Where(other => other.First > piece.First).OrderBy(other => other.First)];
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

    private static PieceGround Unknown(Piece piece, IReadOnlyList<Span> underlay) => new()
    {
        Piece = piece,
        Below = [],
        Above = [],
        Underlay = underlay,
        OnCover = 1,
        UnderCover = 1,
    };

    private static double ShareOf(Piece piece, Piece[] others) => piece.Blanket.Area == 0
        ? 0
        : (double)piece.Blanket.SharedWithAny(others.Select(other => other.Blanket)) / piece.Blanket.Area;
}
