using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>Lines along one edge and the satin over them.</summary>
/// <param name="Placement">The first line: it shows where fabric is laid.</param>
/// <param name="Along">Lines and zigzags sewn along it later, in received order.</param>
/// <param name="Cover">Satin that lies over it, in received order; empty for a patch that is held by a line.</param>
internal sealed record AppliqueShape(LineTurn Placement, IReadOnlyList<LineTurn> Along, IReadOnlyList<Piece> Cover)
{
    /// <summary>Penetration, counted from 0, at which the cover begins; behind the last one where there is none.</summary>
    internal int CoverFrom => Cover.Count == 0 ? int.MaxValue : Cover[0].First;

    /// <summary>The line that holds the fabric: the first one behind a stop and before the cover; null where none does.</summary>
    internal LineTurn? Hold => BeforeCover.FirstOrDefault(line => line.Block > Placement.Block);

    /// <summary>A stop lies between the placement line and what holds or covers the fabric.</summary>
    internal bool HasStop => !IsHeldAtOnce && (Hold is not null || (Cover.Count > 0 && Cover[0].Block > Placement.Block));

    /// <summary>Lines along the edge that are sewn when the cover has begun already.</summary>
    internal IEnumerable<LineTurn> Late => Along.Where(line => line.Interval.First > CoverFrom);

    /// <summary>
    /// What holds the fabric follows the placement line without a stop: a zigzag, or a line for which the thread was
    /// cut. A line that goes on round once more may be a placement line meant to be seen well, unless nothing else holds.
    /// </summary>
    internal bool IsHeldAtOnce => BeforeCover.Any(line =>
        line.Block == Placement.Block
        && (!line.IsLine || line.Run != Placement.Run || Hold is null));

    private IEnumerable<LineTurn> BeforeCover => Along.Where(line => line.Interval.First < CoverFrom);
}
