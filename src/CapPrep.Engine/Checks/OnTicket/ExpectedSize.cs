namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>
/// Size of the design against the size that was sold: another size is another file or another version. The larger
/// of a length and a share of the sold size is allowed.
/// </summary>
internal static class ExpectedSize
{
    internal static readonly Check Check = new("ticket.size", Needs.TapeAndTicket, Find, report => report.Worst.Text);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var (expected, box) = (subject.Ticket.Received.ExpectedSize, subject.Stitches.Extents().ToMillimeters());
        return new[]
        {
            Compare("/expectedSize/widthMm", "wide", box.Width, expected?.WidthMm, rule),
            Compare("/expectedSize/heightMm", "tall", box.Height, expected?.HeightMm, rule),
        }.OfType<Occurrence>();
    }

    private static Occurrence? Compare(string pointer, string word, double measured, double? expected, RuleInForce rule)
    {
        if (expected is not { } wanted)
            return null;
        var difference = Math.Abs(measured - wanted);
        if (rule.Limits.PassedBy(difference) is not { Value: { } length })
            return null;
        var allowed = Math.Max(length, wanted * rule.Parameter("toleranceShare"));
        return difference <= allowed ? null : new Occurrence(Subject.InTicket(pointer))
        {
            Measured = difference,
            LimitHere = allowed,
            Text = $"The design is {Figure.Mm(measured)} {word}; the ticket expects {Figure.Mm(wanted)}.",
        };
    }
}
