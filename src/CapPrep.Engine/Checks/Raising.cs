using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>Makes one finding of everything that one rule met.</summary>
internal static class Raising
{
    private const int ListedPlaces = 20;

    /// <summary>Null when nothing passes a limit.</summary>
    /// <param name="except">Places that do not count; null: all count.</param>
    internal static Finding? Raise(Subject subject, Check check, EffectiveRule rule, Func<Place, bool>? except = null)
    {
        var limits = Limits.Of(rule, subject);
        var found = check.Find(subject, new RuleInForce(rule, limits));
        var met = WorstFirst(except is null ? found : found.Where(one => !except(one.Place)), limits);
        if (met.Count == 0)
            return null;
        var worst = met[0].Occurrence;
        var limit = AppliedTo(rule.Row, met[0].Passed);
        var wanted = Wanted(rule.Row, worst, limit, limits);
        return new Finding
        {
            Number = 0,
            Rule = check.Rule,
            Severity = limit.Level,
            Count = met.Sum(one => one.Occurrence.Times),
            Message = check.Say(new Report([.. met.Select(one => one.Occurrence)], limit)
            {
                AtLevel = met.Count(one => one.Passed.Level == limit.Level),
                Mildest = limits.Mildest ?? limit.Value ?? 0,
            }),
            Measured = worst.Measured is { } measured ? Rounded(measured, rule.Row.Unit) : null,
            Limit = limit,
            Wanted = wanted,
            Places = [.. met.Take(ListedPlaces).Select(one => PlaceOf(one.Occurrence, rule.Row.Unit)).InReadingOrder()],
            Asks = limit.Level == Severity.Hold ? rule.Row.HoldAsks : Asks.Nothing,
            Remedy = rule.Row.Remedy is { } remedy ? FilledIn(remedy, limit, wanted) : null,
        };
    }

    private static List<(Occurrence Occurrence, PassedLimit Passed)> WorstFirst(IEnumerable<Occurrence> found, Limits limits)
    {
        var sign = limits.Is == LimitIs.AtLeast ? 1 : -1;
        return
        [
            .. found
                .Select(one => (Occurrence: one, Passed: limits.PassedBy(one)))
                .Where(one => one.Passed is not null)
                .Select(one => (one.Occurrence, one.Passed!))
                .OrderByDescending(one => one.Item2.Level)
                .ThenBy(one => sign * (one.Occurrence.Measured ?? 0)),
        ];
    }

    private static AppliedLimit AppliedTo(RuleRow row, PassedLimit passed)
    {
        var asBuiltIn = passed.SetBy.Id == HouseBook.BookId;
        return new AppliedLimit
        {
            Is = row.Is,
            Value = row.Is != LimitIs.None && passed.Value is { } value ? Rounded(value, row.Unit).Value : null,
            Unit = row.Unit,
            Level = passed.Level,
            Kind = asBuiltIn ? row.Kind : LimitKind.House,
            Source = asBuiltIn && row.Kind == LimitKind.Published ? Embedded.PublishedSources.FirstPublished(row.Sources) : null,
            SetBy = passed.SetBy,
        };
    }

    private static Place PlaceOf(Occurrence occurrence, string unit) => occurrence.Place with
    {
        Measured = occurrence.Measured is { } measured ? Rounded(measured, unit) : null,
    };

    /// <summary>Where a hold was passed, what would not even warn.</summary>
    private static Quantity? Wanted(RuleRow row, Occurrence worst, AppliedLimit limit, Limits limits)
    {
        if (limit.Value is not { } passed)
            return null;
        var value = limit.Level == Severity.Hold && worst.LimitHere is null ? limits.At(Severity.Warn) ?? passed : passed;
        return Rounded(value, row.Unit);
    }

    /// <summary>A digitizer is told what will not come back as a warn.</summary>
    private static RuleRemedy FilledIn(RuleRemedy remedy, AppliedLimit limit, Quantity? wanted) => remedy with
    {
        Message = remedy.Message
            .Replace("{limit}", LimitFor(remedy.Who, limit, wanted) is { } value ? Figure.Plain(Safe(value, limit), 2) : "", StringComparison.Ordinal)
            .Replace("{unit}", limit.Unit, StringComparison.Ordinal),
    };

    private static double? LimitFor(Actor who, AppliedLimit limit, Quantity? wanted) =>
        who == Actor.Digitizer ? wanted?.Value : limit.Value;

    /// <summary>Lengths to 0.1 mm as the sentences say them, on the good side of the limit.</summary>
    private static double Safe(double value, AppliedLimit limit) => limit.Unit != "mm" ? value
        : limit.Is == LimitIs.AtLeast ? Math.Ceiling(Math.Round(value * 10, 3)) / 10
        : Math.Floor(Math.Round(value * 10, 3)) / 10;

    private static Quantity Rounded(double value, string unit) =>
        new(Math.Round(value, Decimals(unit), MidpointRounding.AwayFromZero), unit);

    private static int Decimals(string unit) => unit switch
    {
        "mm" => 2,
        "degrees" => 1,
        _ => 4,
    };
}
