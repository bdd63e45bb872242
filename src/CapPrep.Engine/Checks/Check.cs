namespace CapPrep.Engine.Checks;

/// <summary>What a check must know before it can judge.</summary>
internal enum Needs
{
    /// <summary>Tape and ticket are enough.</summary>
    TapeAndTicket,

    /// <summary>The design lies on a cap.</summary>
    SeatedDesign,
}

/// <summary>Of what a rule is asked a second time.</summary>
internal enum Again
{
    Never,

    /// <summary>Of the written tape: the writer can cure what it finds.</summary>
    OfWrittenTape,

    /// <summary>Of the order in which the written tape sews the received elements.</summary>
    OfNewOrder,
}

/// <summary>The function that belongs to one row of the rule book.</summary>
/// <param name="Rule">Id of the row.</param>
/// <param name="Needs">Without it the check is silent.</param>
/// <param name="Find">Everything that may pass a limit; the limits decide which of it becomes a finding.</param>
/// <param name="Say">The sentence of the finding.</param>
internal sealed record Check(
    string Rule,
    Needs Needs,
    Func<Subject, RuleInForce, IEnumerable<Occurrence>> Find,
    Func<Report, string> Say)
{
    /// <summary>
    /// Of what it is asked again when a tape was written. Rules about needle points and about the ticket are not:
    /// writing changes neither.
    /// </summary>
    internal Again AskAgain { get; init; }

    /// <summary>A check whose occurrences each have their own sentence.</summary>
    internal static Check Telling(string rule, Needs needs, Func<Subject, RuleInForce, IEnumerable<Occurrence>> find) =>
        new(rule, needs, find, report => string.Join(' ', report.WorstFirst.Take(Told).Select(one => one.Text)));

    private const int Told = 3;
}

/// <summary>One rule with its numbers, as its function needs it.</summary>
internal sealed record RuleInForce(EffectiveRule Rule, Limits Limits)
{
    /// <summary>A further number of the row; a row without it is our fault.</summary>
    internal double Parameter(string name) => Rule.Row.Parameters.TryGetValue(name, out var value)
        ? value
        : throw new EngineFaultException($"The rule row {Rule.Row.Rule} lacks the parameter {name}.");
}

/// <summary>What a finding's sentence is made from.</summary>
/// <param name="WorstFirst">At least one.</param>
/// <param name="Limit">The limit that the worst one passed.</param>
internal sealed record Report(IReadOnlyList<Occurrence> WorstFirst, AppliedLimit Limit)
{
    internal Occurrence Worst => WorstFirst[0];

    internal double Measured => Worst.Measured ?? 0;

    internal double LimitValue => Limit.Value ?? 0;

    /// <summary>How many occurrences, from the first, passed <see cref="Limit"/>; the others passed only a milder one.</summary>
    internal required int AtLevel { get; init; }

    /// <summary>The mildest limit of the rule, which every occurrence passed.</summary>
    internal required double Mildest { get; init; }
}
