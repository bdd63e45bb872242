using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>A column over foam.</summary>
/// <param name="Piece">The piece it is, or is a part of.</param>
/// <param name="Rows">Its rows; more than one.</param>
/// <param name="Cover">Cells under them.</param>
/// <param name="Axis">Direction of its rows.</param>
internal sealed record FoamColumn(Piece Piece, ColumnRows Rows, Cover Cover, Axis Axis)
{
    // House: fewer rows shape nothing.
    private const int LeastRows = 8;

    // House: a short column under or over the end of another, half of it shared, only closes that end.
    private const double SharedShare = 0.5;

    internal Interval Interval => new(Rows[0].Interval.First, Rows[Rows.Count - 1].Interval.Last);

    internal Box Box { get; } = Rows.All.Select(row => Box.Of(row.From).Union(row.To)).Aggregate((sum, box) => sum.Union(box));

    internal Place PlaceIn(Subject subject) => subject.PlaceOf(Interval.First, Interval.Last) with { Elements = [Piece.Element + 1] };

    /// <summary>The columns that shape the foam; those that only close an end are left out.</summary>
    internal static IReadOnlyList<FoamColumn> Shaping(IEnumerable<Piece> satin, StitchSequence stitches)
    {
        FoamColumn[] all = [.. satin.SelectMany(piece => ColumnRows.Of(piece, stitches).Straight()
            .Where(rows => rows.Count >= LeastRows)
            .Select(rows => Of(piece, rows, stitches)))];
        return [.. all.Where(column => !all.Any(column.ClosesAnEndOf))];
    }

    private static FoamColumn Of(Piece piece, ColumnRows rows, StitchSequence stitches) => new(
        piece,
        rows,
        stitches.ThreadOf(new(rows[0].Interval.First, rows[rows.Count - 1].Interval.Last)),
        rows.All.Aggregate(Axis.None, (axis, row) => axis.With(Axis.Of(row.Chord))));

    private bool ClosesAnEndOf(FoamColumn other) =>
        other.Cover.Area > Cover.Area
        && Cover.CanShare(Box, other.Box)
        && !other.Axis.IsWithin30Degrees(Axis)
        && other.Cover.Shared(Cover) >= SharedShare * Cover.Area;
}
