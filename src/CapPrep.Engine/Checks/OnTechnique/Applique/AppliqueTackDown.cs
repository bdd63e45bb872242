using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>
/// Satin that begins before the fabric is held all round pushes it out of place. A patch may be held by its edge alone.
/// </summary>
internal static class AppliqueTackDown
{
    internal static readonly Check Early = new(
        "applique.early",
        Needs.SeatedDesign,
        (subject, _) => subject.AppliqueShapes
            .Where(shape => shape.HasStop && shape.Cover.Count > 0)
            .Select(shape => new Occurrence(subject.PlaceOf(shape.CoverFrom, shape.Cover[0].Last)) { Measured = LooseMm(subject, shape) }),
        report => $"The satin over the edge begins while {Figure.Mm(report.Measured)} of the edge is not yet held by the tack-down.");

    /// <summary>Length of the edge that is not held when the cover begins.</summary>
    private static double LooseMm(Subject subject, AppliqueShape shape)
    {
        if (shape.Late.FirstOrDefault() is { } late)
            return Length(subject, late);
        if (shape.Hold is not { } hold)
            return subject.Ticket.Technique == Technique.Patch ? 0 : Length(subject, shape.Placement);
        return hold.IsClosed ? 0 : Fine.Millimeters(Fine.Length(subject.Stitches.At(hold.Interval.Last) - subject.Stitches.At(hold.Interval.First)));
    }

    private static double Length(Subject subject, LineTurn line) => Fine.Millimeters(Pieces.Painting.LengthOf(subject.Stitches, line.Interval));
}
