using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Calls;

/// <summary>
/// Reads the parameters of a query and collects every fault: a parameter nobody knows, one given twice, a value out
/// of its bounds.
/// </summary>
internal sealed class QueryReader
{
    private readonly IQueryCollection _query;
    private readonly List<Violation> _violations = [];

    /// <param name="known">All parameters the address takes.</param>
    public QueryReader(IQueryCollection query, params IReadOnlyList<string> known)
    {
        _query = query;
        foreach (var name in query.Keys.Where(name => !known.Contains(name, StringComparer.Ordinal)).Order(StringComparer.Ordinal))
            Fault(name, ViolationCodes.UnknownField, $"This address has no parameter '{name}'.", [.. known.Order(StringComparer.Ordinal)]);
    }

    /// <summary>The refusal with all faults found so far; null when there is none.</summary>
    public Refusal? Refusal => _violations.Count == 0
        ? null
        : new Refusal(Problems.QueryInvalid, $"Wrong in the query: {string.Join(", ", _violations.Select(fault => fault.Pointer).Distinct())}.")
        {
            Violations = _violations,
        };

    public string? Text(string name)
    {
        var values = _query[name];
        if (values.Count > 1)
            Fault(name, ViolationCodes.DuplicateField, $"'{name}' may be given once.");
        if (values.ToString().Any(char.IsControl))
        {
            // PostgreSQL keeps no NUL in a text, and nothing of ours holds any other.
            Fault(name, ViolationCodes.BadFormat, $"'{name}' holds control characters.");
            return null;
        }

        return string.IsNullOrEmpty(values.ToString()) ? null : values[0];
    }

    /// <summary>One of some words; null when absent or wrong.</summary>
    public string? Word(string name, IReadOnlyList<string> allowed) => Known(name, Text(name), allowed);

    /// <summary>Any number of some words.</summary>
    public IReadOnlyList<string> Words(string name, IReadOnlyList<string> allowed) =>
        [.. _query[name].Select(word => Known(name, word, allowed)).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>A page size: at least 1, standard 50, more than 200 is cut to 200.</summary>
    public int Limit()
    {
        if (Text("limit") is not { } text)
            return 50;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var limit) && limit >= 1)
            return Math.Min(limit, 200);
        Fault("limit", ViolationCodes.OutOfRange, $"'{text}' is not a whole number of at least 1.");
        return 50;
    }

    public bool? Flag(string name) => Word(name, ["false", "true"]) switch
    {
        "true" => true,
        "false" => false,
        _ => null,
    };

    /// <summary>A time as RFC 3339 with its offset.</summary>
    public DateTimeOffset? Time(string name)
    {
        if (Text(name) is not { } text)
            return null;
        string[] forms = ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];
        if (text.Length > 19 && DateTimeOffset.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
            return time;
        Fault(name, ViolationCodes.BadFormat, $"'{text}' is not a time like 2026-11-25T08:19:04Z.");
        return null;
    }

    public void Fault(string name, string code, string message, IReadOnlyList<string>? allowed = null) =>
        _violations.Add(new Violation("query", code, message) { Pointer = name, Allowed = allowed ?? [] });

    private string? Known(string name, string? word, IReadOnlyList<string> allowed)
    {
        if (word is null || allowed.Contains(word, StringComparer.Ordinal))
            return word;
        Fault(name, ViolationCodes.BadFormat, $"'{word}' is none of the words that '{name}' takes.", allowed);
        return null;
    }
}
