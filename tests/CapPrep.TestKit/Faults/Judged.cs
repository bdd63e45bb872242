using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;
using CapPrep.FaultCorpus;
using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.TestKit.Faults;

/// <summary>What the engine said of one tape of the corpus, against what is true.</summary>
/// <param name="Found">The planted fault was reported, where it lies.</param>
/// <param name="Elsewhere">Its rule spoke, but of another place or too quietly.</param>
/// <param name="Alarms">Rules that warned or held without a cause.</param>
public sealed record Judged(CorpusTape Tape, bool Found, bool Elsewhere, IReadOnlyList<string> Alarms)
{
    // A place is drawn round needle points; its edges are as fine as stitches are long.
    private const double PlaceRoom = 1;

    public string? Rule => Tape.Truth.Fault?.Rule;

    public static Judged Of(CorpusTape tape) => Of(tape, CapPrepper.Prepare(CorpusOrder.Request(tape)).Findings);

    public static Judged Of(CorpusTape tape, IReadOnlyList<Finding> findings)
    {
        var fault = tape.Truth.Fault;
        var own = findings.Where(finding => finding.Rule == fault?.Rule && finding.State != FindingState.Introduced).ToList();
        var isFound = fault is not null && own.Any(finding => finding.Severity >= Least(fault) && Lies(finding, fault.Place));
        var alarms = findings
            .Where(finding => finding.Severity >= Severity.Warn && finding.Rule != fault?.Rule)
            .Select(finding => finding.Rule)
            .Where(rule => fault?.Companions.Contains(rule) != true)
            .Distinct();
        return new(tape, isFound, own.Count > 0 && !isFound, [.. alarms]);
    }

    private static Severity Least(PlantedFault fault) => Enum.Parse<Severity>(fault.AtLeast, ignoreCase: true);

    private static bool Lies(Finding finding, Rect? truth)
    {
        if (truth is not { } place)
            return true;
        return finding.Places.Any(found => found.BoxMm is { } box
            && place.Grown(PlaceRoom).Meets(new(box.Left, box.Bottom, box.Right, box.Top)));
    }
}
