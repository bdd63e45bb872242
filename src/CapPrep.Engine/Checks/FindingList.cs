using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>The list of findings as the result shows it: what is still there first, worst first, numbered and marked.</summary>
internal static class FindingList
{
    /// <summary>Findings that the proof draws.</summary>
    private const int DrawnFindings = 7;

    /// <summary>Places of one finding that are drawn.</summary>
    private const int DrawnPlaces = 5;

    /// <summary>Which of the two orders each finding belongs to.</summary>
    /// <param name="received">Findings of the received tape, in the order of the rule rows.</param>
    /// <param name="written">Findings of the written tape among the rules that are asked again; null: nothing was written.</param>
    internal static IReadOnlyList<Finding> Compared(IReadOnlyList<Finding> received, IReadOnlyList<Finding>? written) =>
        written is null ? received : [.. BothOf(received, written)];

    /// <summary>Sorts, numbers and marks.</summary>
    internal static IReadOnlyList<Finding> Numbered(IReadOnlyList<Finding> findings) =>
        Marked([.. findings
            .OrderBy(finding => finding.State)
            .ThenByDescending(finding => finding.Severity)
            .Select((finding, i) => finding with { Number = i + 1 })]);

    private static IEnumerable<Finding> BothOf(IReadOnlyList<Finding> received, IReadOnlyList<Finding> written) => received
        .Select(finding => Inspector.IsAskedAgain(finding.Rule) ? After(finding, Same(finding, written)) : finding)
        .Concat(written
            .Where(finding => Same(finding, received) is null)
            .Select(finding => finding with { State = FindingState.Introduced }));

    private static Finding? Same(Finding finding, IReadOnlyList<Finding> others) =>
        others.FirstOrDefault(other => other.Rule == finding.Rule);

    /// <summary>Writing may cure a finding wholly or make it milder; its needle points keep their numbers.</summary>
    private static Finding After(Finding received, Finding? written) => written switch
    {
        null => received with { State = FindingState.Solved },
        _ when written.Measured is { } then && then != received.Measured && Inspector.IsAboutOrder(received.Rule) => received with
        {
            Severity = written.Severity,
            Limit = written.Limit,
            InNewOrder = then,
            Message = $"{received.Message} In the new order: {Figure.Plain(100 * then.Value, 0)} %.",
        },
        _ => written.Severity == received.Severity ? received : written,
    };

    private static IReadOnlyList<Finding> Marked(IReadOnlyList<Finding> findings)
    {
        var mark = 0;
        return
        [
            .. findings.Select(finding => finding.Number <= DrawnFindings && finding.State != FindingState.Solved
                ? finding with { Places = Marked(finding, ref mark) }
                : finding),
        ];
    }

    private static IReadOnlyList<Place> Marked(Finding finding, ref int mark)
    {
        var places = new List<Place>(finding.Places.Count);
        var drawn = WorstOnCap(finding);
        foreach (var place in finding.Places)
            places.Add(drawn.Contains(place, ReferenceEqualityComparer.Instance) ? place with { Mark = ++mark } : place);
        return places;
    }

    private static IReadOnlyList<Place> WorstOnCap(Finding finding)
    {
        var sign = finding.Limit.Is == LimitIs.AtLeast ? 1 : -1;
        return
        [
            .. finding.Places
                .Where(place => place.BoxMm is not null)
                .OrderBy(place => sign * (place.Measured?.Value ?? 0))
                .Take(DrawnPlaces),
        ];
    }
}
