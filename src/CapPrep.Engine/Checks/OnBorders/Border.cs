using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>A fill and what one thread sews over its rim later.</summary>
/// <param name="Fill">The area.</param>
/// <param name="Parts">Columns and lines over its rim, in received order; at least one.</param>
/// <param name="Ground">What is seen as the fill beside the border: all that its thread sews before, without gaps.</param>
internal sealed record Border(Piece Fill, IReadOnlyList<Piece> Parts, Cover Ground)
{
    private IReadOnlyList<EdgeRow>? _rows;

    /// <summary>Its rows along the edge of the fill, measured once.</summary>
    internal IReadOnlyList<EdgeRow> RowsOnEdge(StitchSequence stitches) => _rows ??= EdgeRows.Of(this, stitches);

    /// <summary>The parts that are columns with rows to measure.</summary>
    internal IEnumerable<Piece> Columns => Parts.Where(part => part.RowsInOrder.Count > 0);

    /// <summary>The parts that are single lines.</summary>
    internal IEnumerable<Piece> Lines => Parts.Where(part => part.Class is StitchClass.Running or StitchClass.Retraced);
}
