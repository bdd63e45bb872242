using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.Ground;

/// <summary>What lies under and over a piece.</summary>
internal sealed record PieceGround
{
    internal required Piece Piece { get; init; }

    /// <summary>Closed pieces sewn before it that share cells with it, in sewing order.</summary>
    internal required IReadOnlyList<Piece> Below { get; init; }

    /// <summary>Closed pieces sewn after it that share cells with it, in sewing order.</summary>
    internal required IReadOnlyList<Piece> Above { get; init; }

    /// <summary>Spans of its own that carry it, in sewing order.</summary>
    internal required IReadOnlyList<Span> Underlay { get; init; }

    /// <summary>Share of its area that lies on <see cref="Below"/>, 0 to 1.</summary>
    internal required double OnCover { get; init; }

    /// <summary>Share of its area that lies under <see cref="Above"/>, 0 to 1.</summary>
    internal required double UnderCover { get; init; }
}
