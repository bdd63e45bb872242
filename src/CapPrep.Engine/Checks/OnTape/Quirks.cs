using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnTape;

/// <summary>What the reader met in the container or the records and could live with, one rule for each kind.</summary>
internal static class Quirks
{
    private static readonly string[] Rules =
        [.. TapeRules.OfContainer, TapeRules.RepeatedPoints, TapeRules.ZeroStitches, TapeRules.TrimsUnclear];

    internal static readonly IReadOnlyList<Check> Checks =
    [
        .. Rules.Select(rule => new Check(
            rule,
            Needs.TapeAndTicket,
            (subject, _) => Of(subject.Tape, rule),
            report => report.Worst.Text)
        {
            AskAgain = TapeRules.OfContainer.Contains(rule),
        }),
    ];

    private static IEnumerable<Occurrence> Of(Tape tape, string rule) => tape.Quirks
        .Where(quirk => quirk.Rule == rule)
        .Select(quirk => new Occurrence(new Place(PlaceKind.Tape) { Record = quirk.Record, ByteOffset = quirk.ByteOffset })
        {
            Measured = quirk.Measured,
            Text = quirk.Message,
            Times = quirk.Count,
        });
}
