using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>What comes before work over foam, what is laid over it and what is sewn behind it.</summary>
internal static class FoamOrder
{
    // House: what is smaller is a dot or the rest of a line, mm2.
    private const double SmallestFlat = 1;

    /// <summary>Nobody can lay foam where the machine does not stop. The ticket may lay it before the start.</summary>
    internal static readonly Check NoStop = new(
        "foam.no-stop",
        Needs.SeatedDesign,
        (subject, _) => FirstColumn(subject) is { Block: 1 } first && !IsLaidBeforeStart(subject)
            ? [new Occurrence(PlaceOf(subject, first)) { Level = Severity.Hold }]
            : [],
        _ => "No stop lies before the first column over foam; nobody could lay the foam.");

    /// <summary>Flat stitches behind foam work pull at it and cut it.</summary>
    internal static readonly Check ThenFlat = new("foam.then-flat", Needs.SeatedDesign, (subject, _) => FindFlat(subject), SayFlat);

    /// <summary>A fill cuts the foam all over.</summary>
    internal static readonly Check Fill = new(
        "foam.fill",
        Needs.SeatedDesign,
        (subject, _) => FirstColumn(subject) is { } first
            ? Said(subject).Where(piece => piece.Class == StitchClass.Fill && (piece.First > first.First || piece.Block == first.Block))
                .Select(piece => new Occurrence(PlaceOf(subject, piece)) { Level = Severity.Warn })
            : [],
        report => $"{Figure.Count(report.WorstFirst.Count, "fill lies", "fills lie")} over foam; the needle cuts the foam there.");

    private static IReadOnlyList<Piece> Said(Subject subject) => subject.Foam.IsGuessed ? [] : subject.Foam.All;

    private static Piece? FirstColumn(Subject subject) => Said(subject).FirstOrDefault(piece => piece.Class == StitchClass.Satin);

    /// <summary>The ticket asks for foam before the first stitch.</summary>
    private static bool IsLaidBeforeStart(Subject subject) =>
        subject.Ticket.Received.Threads?.Any(thread => thread is { Block: 1, Action: StopAction.LayFoam }) == true;

    private static IEnumerable<Occurrence> FindFlat(Subject subject) => FirstColumn(subject) is { } first
        ? subject.Reading.Pieces
            .Where(piece => piece.First > first.First && !subject.Foam.Contains(piece) && !subject.Foam.ContainsPoint(piece.First) && piece.Blanket.SquareMillimeters >= SmallestFlat)
            .Select(piece => new Occurrence(PlaceOf(subject, piece)) { Level = Severity.Warn, Measured = SharedWithFoam(subject, piece) })
        : [];

    /// <summary>Square millimeters of a flat piece over foam.</summary>
    private static double SharedWithFoam(Subject subject, Piece flat) =>
        flat.Blanket.SharedWithAny(subject.Foam.All.Where(piece => piece.First < flat.First).Select(piece => piece.Blanket)) / (double)Cover.CellsPerSquareMillimeter;

    private static string SayFlat(Report report) =>
        $"{Figure.Count(report.WorstFirst.Count, "piece")} of flat work {(report.WorstFirst.Any(one => one.Measured >= SmallestFlat) ? "over and behind" : "behind")} the foam work; flat work comes first.";

    private static Place PlaceOf(Subject subject, Piece piece) => subject.PlaceOf(piece.First, piece.Last) with { Elements = [piece.Element + 1] };
}
