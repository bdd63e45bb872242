using CapPrep.Engine.Checks;

namespace CapPrep.Engine.Approvals;

/// <summary>Takes out of a list of findings what people have accepted.</summary>
internal sealed class AcceptedWork
{
    private readonly Subject _received;
    private readonly ILookup<string, Acceptance> _byRule;
    private readonly List<Finding> _left = [];
    private readonly List<AcceptedFinding> _accepted = [];

    private AcceptedWork(Subject received, IReadOnlyList<Acceptance> acceptances) =>
        (_received, _byRule) = (received, acceptances.ToLookup(one => one.Rule, StringComparer.Ordinal));

    /// <summary>What still counts, and what was accepted; both in the order of the list, numbered one after the other.</summary>
    /// <param name="findings">Those of both orders, compared.</param>
    /// <param name="received">The received tape with what was said of its order.</param>
    /// <param name="acceptances">The word in force for these stitches on this cap.</param>
    internal static (IReadOnlyList<Finding> Findings, IReadOnlyList<AcceptedFinding> Accepted) Split(
        IReadOnlyList<Finding> findings, Subject received, IReadOnlyList<Acceptance> acceptances)
    {
        var work = new AcceptedWork(received, acceptances);
        foreach (var finding in findings)
            work.Take(finding);
        var left = FindingList.Numbered(work._left);
        return (left, [.. work._accepted.Select((one, i) => one with { Finding = one.Finding with { Number = left.Count + i + 1 } })]);
    }

    /// <summary>Only what is still open can be accepted: what a new order solves needs no word.</summary>
    private void Take(Finding finding)
    {
        Acceptance[] valid = finding.State == FindingState.Open ? [.. _byRule[finding.Rule].Where(one => one.Seen.IsStill(finding))] : [];
        if (valid.FirstOrDefault(one => one.Element is null) is { } whole)
            _accepted.Add(new(finding, [whole]));
        else if (valid.Where(IsReadTheSame).ToArray() is { Length: > 0 } elements)
            TakePart(finding, elements);
        else
            _left.Add(finding);
    }

    private bool IsReadTheSame(Acceptance one) =>
        _received.Reading.Elements.ElementAtOrDefault(one.Element!.Number - 1) is { } element
        && new StitchRange(element.First + 1, element.Last + 1) == one.Element.Stitches;

    private void TakePart(Finding finding, Acceptance[] elements)
    {
        var numbers = elements.Select(one => one.Element!.Number).ToHashSet();
        var covered = finding.Places.Where(place => IsCovered(place, numbers)).ToArray();
        var rest = Inspector.CanBeAskedInPart(finding.Rule)
            ? Inspector.InspectRule(_received, finding.Rule, place => IsCovered(place, numbers))
            : covered.Length == finding.Places.Count ? null : finding;
        if (rest is not null)
            _left.Add(rest);
        if (covered.Length == 0 || ReferenceEquals(rest, finding))
            return;
        var met = covered.SelectMany(place => place.Elements).ToHashSet();
        var accepted = rest is null ? finding : finding with { Places = covered, Count = covered.Length };
        _accepted.Add(new(accepted, [.. elements.Where(one => met.Contains(one.Element!.Number))]));
    }

    private static bool IsCovered(Place place, HashSet<int> numbers) =>
        place.Elements.Count > 0 && place.Elements.All(numbers.Contains);
}
