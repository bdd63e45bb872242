using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTechnique.Metallic;

/// <summary>
/// Metallic thread, where the ticket names it by its kind: it frays in short stitches, dense areas and narrow columns.
/// Ties and the turns of rows are short on purpose, and what lies over foam has limits of its own.
/// </summary>
internal static class MetallicChecks
{
    // A fill's rows each go one way, a column's go out and back within its pitch.
    private const int RowsInPitch = 2;

    internal static readonly IReadOnlyList<Check> All =
    [
        new(
            "metallic.step",
            Needs.SeatedDesign,
            FindShort,
            report => $"{Figure.Plain(100 * report.Measured, 0)} % of the stitches in metallic thread are too short; at most {Figure.Plain(100 * report.LimitValue, 0)} % is wanted."),
        new(
            "metallic.pitch",
            Needs.SeatedDesign,
            (subject, _) => Pieces(subject).Select(piece => new Occurrence(PlaceOf(subject, piece)) { Measured = PitchMm(subject, piece) }),
            report => $"{Figure.Count(report.WorstFirst.Count, "area")} in metallic thread: rows lie {Figure.Plain(report.Measured, 2)} mm apart; at least {Figure.Plain(report.LimitValue, 2)} mm is wanted."),
        new(
            "metallic.column",
            Needs.SeatedDesign,
            (subject, _) => Pieces(subject).Where(piece => piece.Class == StitchClass.Satin)
                .Select(piece => new Occurrence(PlaceOf(subject, piece)) { Measured = piece.WidthMm }),
            report => $"{Figure.Count(report.WorstFirst.Count, "column")} in metallic thread: {Figure.Mm(report.Measured)} is too narrow; at least {Figure.Mm(report.LimitValue)} is wanted."),
    ];

    private static HashSet<int> BlocksOf(Subject subject) =>
        [.. ThreadList.Of(subject.Ticket.Received).SelectMany(list => list.Threads).Where(thread => thread.Kind == ThreadKind.Metallic).Select(thread => thread.Block)];

    private static IEnumerable<Piece> Pieces(Subject subject)
    {
        var blocks = BlocksOf(subject);
        return subject.Reading.Pieces.Where(piece => piece.IsClosed && blocks.Contains(piece.Block) && !subject.Foam.Contains(piece));
    }

    private static double PitchMm(Subject subject, Piece piece)
    {
        var pitch = ColumnRows.Of(piece, subject.Stitches).PitchMm();
        return Math.Round(piece.Class == StitchClass.Fill ? pitch / RowsInPitch : pitch, 2, MidpointRounding.AwayFromZero);
    }

    private static Place PlaceOf(Subject subject, Piece piece) => subject.PlaceOf(piece.First, piece.Last) with { Elements = [piece.Element + 1] };

    /// <summary>Block by block.</summary>
    private static IEnumerable<Occurrence> FindShort(Subject subject, RuleInForce rule)
    {
        var steps = new MetallicSteps(subject, rule.Parameter("stitchBelowMm"));
        return BlocksOf(subject).Order()
            .Select(steps.Of)
            .Where(block => block.Steps > 0)
            .Select(block => new Occurrence(subject.PlaceOf(block.First, block.Last)) { Measured = (double)block.Short / block.Steps });
    }
}
