using System.Globalization;

namespace CapPrep.TestKit.Faults;

/// <summary>One row of the confusion table.</summary>
/// <param name="Elsewhere">Of the missed: the rule spoke of another place, or only in a note.</param>
/// <param name="FalseAlarms">Clean tapes on which the rule warned or held.</param>
/// <param name="FalseCompanions">Tapes with another rule's fault on which it warned or held without a cause.</param>
public sealed record FaultRow(string Rule, int Planted, int Found, int Elsewhere, int FalseAlarms, int FalseCompanions, bool HasRule)
{
    public int Missed => Planted - Found;
}

/// <summary>The outcome of the whole corpus in words.</summary>
public sealed record FaultTable(IReadOnlyList<FaultRow> Rows, int Clean, int CleanWithAlarm)
{
    /// <summary>Judged tapes as a table; rules without a row in the rule book are listed and not judged.</summary>
    public static FaultTable Of(IReadOnlyList<Judged> judged, IReadOnlySet<string> known, IReadOnlyList<string> planted)
    {
        var clean = judged.Where(tape => tape.Rule is null).ToList();
        var faulty = judged.Where(tape => tape.Rule is not null).ToList();
        var rules = planted.Concat(judged.SelectMany(tape => tape.Alarms)).Distinct();
        return new(
            [.. rules.Select(rule => Row(rule, clean, faulty, known.Contains(rule)))],
            clean.Count,
            clean.Count(tape => tape.Alarms.Count > 0));
    }

    private static FaultRow Row(string rule, List<Judged> clean, List<Judged> faulty, bool hasRule)
    {
        var own = faulty.Where(tape => tape.Rule == rule).ToList();
        return new(
            rule, own.Count, own.Count(tape => tape.Found), own.Count(tape => tape.Elsewhere),
            clean.Count(tape => tape.Alarms.Contains(rule)), faulty.Count(tape => tape.Alarms.Contains(rule)), hasRule);
    }

    public IEnumerable<string> Lines()
    {
        yield return $"{"rule",-26} planted  found missed (elsewhere) at most  alarms at most  companions";
        foreach (var row in Rows)
            yield return Line(row);
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"{Clean} clean tapes, {CleanWithAlarm} with an alarm; at most {Confidence.UpperLimit(CleanWithAlarm, Clean):0.0%} (95 %).");
    }

    private string Line(FaultRow row)
    {
        if (!row.HasRule)
            return $"{row.Rule,-26} no rule yet";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{row.Rule,-26} {row.Planted,7} {row.Found,6} {row.Missed,6} {row.Elsewhere,11} {Confidence.UpperLimit(row.Missed, row.Planted),7:0.0%} {row.FalseAlarms,7} {Confidence.UpperLimit(row.FalseAlarms, Clean),7:0.0%} {row.FalseCompanions,11}");
    }
}
