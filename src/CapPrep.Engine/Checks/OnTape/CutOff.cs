using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTape;

/// <summary>
/// A tape that ends before its announced end sews half a crest. Without an end record and without an announced
/// count nobody can tell, which is a warn.
/// </summary>
internal static class CutOff
{
    internal static readonly Check Check = new("tape.cut-off", Needs.TapeAndTicket, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var read = subject.Tape.RecordCount;
        var end = new Place(PlaceKind.Tape) { Record = read, ByteOffset = Tapes.Tape.ByteOffsetOf(read) };
        if (subject.Tape.Header.Records is not (> 0 and var announced))
            return subject.Tape.Ending.HasEndRecord ? [] : [new Occurrence(end) { Level = Severity.Warn }];
        return [new Occurrence(end) { Measured = Math.Max(0, announced - read) / (double)announced, Text = Missing(announced, read) }];
    }

    private static string Say(Report report) => report.Worst.Text.Length > 0
        ? report.Worst.Text
        : "The tape has no end record and announces no number of records: check that it is whole.";

    private static string Missing(int announced, int read) =>
        $"The tape announces {Figure.Count(announced, "record")} and holds {Figure.Plain(read, 0)}: the rest is missing.";
}
