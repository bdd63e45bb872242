namespace CapPrep.Engine.Checks.OnOrder.Returns;

/// <summary>
/// Threads that come back although what they sew could be joined: a change of thread that nothing asks for. Silent for
/// shapes that are outlined one at a time (fact rows Q06, Q07), and where a person's stop lies between.
/// </summary>
internal static class BackAgain
{
    internal static readonly Check Check = new("order.back-again", Needs.SeatedDesign, Find, Say) { AskAgain = Again.OfNewOrder };

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        var turns = ThreadTurns.Of(subject);
        return Enumerable.Range(0, turns.Count)
            .Where(turns.NeedNot)
            .Select(turn => new Occurrence(PlaceOf(subject, turns[turn].Elements))
            {
                Measured = MinutesOf(subject),
                Text = $"block {Figure.Plain(turns[turn].Block, 0)}",
            });
    }

    private static Place PlaceOf(Subject subject, IReadOnlyList<int> elements)
    {
        var first = subject.Reading.Elements[elements.Min()];
        var last = subject.Reading.Elements[elements.Max()];
        return subject.PlaceOf(first.First, last.Last);
    }

    /// <summary>On the whole order.</summary>
    private static double MinutesOf(Subject subject)
    {
        var heads = Math.Max(1, subject.Setup.Machine.Heads - subject.Setup.Machine.HeadsOff.Count);
        var loads = Math.Max(1, (subject.Ticket.Received.Quantity + heads - 1) / heads);
        return subject.Setup.Machine.Stops.ColorChangeSeconds * loads / 60.0;
    }

    private static string Say(Report report)
    {
        var minutes = report.WorstFirst.Sum(one => one.Measured ?? 0);
        var blocks = string.Join(", ", report.WorstFirst.Take(3).Select(one => one.Text));
        return $"A thread comes back and need not: {blocks}. That takes {Figure.Plain(minutes, 1)} min on this order.";
    }
}
