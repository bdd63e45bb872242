using System.Globalization;
using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>Makes the points of a decision: what it is said of, and what it is bound to.</summary>
internal sealed class DecisionPoints(DecidedJob job, DecisionBody body, string id, DateTimeOffset now)
{
    /// <summary>Of so many places a finding lists the worst only.</summary>
    private const int ListedPlaces = 20;

    /// <summary>A finding that meets more elements is said of the design as a whole.</summary>
    private const int MostElements = 50;

    private static readonly string Open = Words<FindingState>.Standard.Of(FindingState.Open);

    private readonly JobInputs _inputs = JobInputs.Read(job.Row.Inputs);
    private readonly string? _sewnSha = job.SewnStitchesSha;
    private readonly IReadOnlyDictionary<int, (int First, int Last)> _elements = job.Result.Elements;

    /// <summary>At least one.</summary>
    public IReadOnlyList<DecisionRow> Rows()
    {
        DecisionRow[] rows = body.Decision switch
        {
            DecisionWord.ApproveSample => [Row(null, null, null, job.IsResequenced ? SeenThings.Sample(job.Result) : null)],
            DecisionWord.Accept => [.. Named().SelectMany(Accepted)],
            _ when body.Findings is null => [Row(null, null, null, null)],
            _ => [.. Named().Select(finding => Row(finding.Number, finding.Rule, null, null)), .. AcceptedBefore()],
        };
        for (var i = 0; i < rows.Length; i++)
            rows[i].Id = string.Create(CultureInfo.InvariantCulture, $"{id}.{i + 1}");
        return rows;
    }

    private IEnumerable<StoredFinding> Named() => job.Result.Findings
        .Where(finding => finding.State == Open && body.Findings?.Contains(finding.Number) != false);

    private IEnumerable<DecisionRow> AcceptedBefore() => job.Result.Accepted
        .Where(accepted => body.Findings!.Contains(accepted.Number))
        .DistinctBy(accepted => accepted.Number)
        .Select(accepted => Row(accepted.Number, accepted.Rule, null, null));

    private IEnumerable<DecisionRow> Accepted(StoredFinding finding)
    {
        var oneJob = OneJobRules.Holds(finding.Rule, SeverityOf(finding));
        foreach (var element in ElementsOf(finding))
        {
            var row = Row(finding.Number, finding.Rule, element, SeenThings.Point(finding, element is { } number ? _elements[number] : null));
            row.OneJob = oneJob;
            yield return row;
        }
    }

    /// <summary>A single null: the finding is said of the stitches as a whole.</summary>
    private IReadOnlyList<int?> ElementsOf(StoredFinding finding)
    {
        var places = finding.Places
            .Select(place => place.TryGetProperty("elements", out var elements) ? elements.EnumerateArray().Select(element => element.GetInt32()).ToArray() : [])
            .ToArray();
        int?[] met = [.. places.SelectMany(elements => elements).Distinct().Order().Select(element => (int?)element)];
        return places.Length < ListedPlaces && places.All(elements => elements.Length > 0)
            && met.Length is > 0 and <= MostElements && met.Length < _elements.Count && met.All(element => _elements.ContainsKey(element!.Value))
                ? met
                : [null];
    }

    private static Severity SeverityOf(StoredFinding finding) =>
        Words<Severity>.Standard.TryParse(finding.Severity, out var severity) ? severity : Severity.Hold;

    private DecisionRow Row(int? finding, string? rule, int? element, byte[]? seen) => new()
    {
        Shop = job.Row.Shop,
        Id = id,
        Said = id,
        Job = job.Row.Id,
        OrderNumber = job.Row.OrderNumber,
        Decision = body.Decision,
        By = body.By,
        Reason = body.Reason,
        Finding = finding,
        Rule = rule,
        Element = element,
        ReceivedStitchesSha = job.Binding.StitchesSha,
        SewnStitchesSha = _sewnSha,
        CapStyle = job.Binding.CapStyle,
        Location = job.Binding.Location,
        Technique = job.Binding.Technique,
        Machine = _inputs.Machine.Id,
        RuleBookVersion = _inputs.RuleBook.Version,
        Seen = seen,
        At = now,
    };
}
