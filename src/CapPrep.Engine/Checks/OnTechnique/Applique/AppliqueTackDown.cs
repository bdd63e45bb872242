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
        report => $"The satin over the edge begins too early. The tack-down leaves {Figure.Mm(report.Measured)} of the edge loose.");

    /// <summary>Length of the edge that is not held when the cover begins; beside a zigzag what lies far from it.</summary>
    private static double LooseMm(Subject subject, AppliqueShape shape)
    {
        if (shape.Late.FirstOrDefault() is { } late)
            return Length(subject, late);
        if (shape.Hold is not { } hold)
            return subject.Ticket.Technique == Technique.Patch ? 0 : Length(subject, shape.Placement);
        return hold.IsClosed ? 0
            : hold.IsLine ? Fine.Millimeters(Fine.Length(subject.Stitches.At(hold.Interval.Last) - subject.Stitches.At(hold.Interval.First)))
            : shape.Placement.FarFromMm(hold);
    }

    private static double Length(Subject subject, LineTurn line) => Fine.Millimeters(Pieces.Painting.LengthOf(subject.Stitches, line.Interval));
}
