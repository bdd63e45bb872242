using System.Globalization;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Texts;

/// <summary>The engine's own values in a reader's words.</summary>
internal static class VerdictWords
{
    public static bool Sews(this Verdict verdict) => verdict is Verdict.SewAsReceived or Verdict.SewResequenced;

    public static string Of(this SheetWords words, Verdict verdict) => words["verdict." + Words<Verdict>.Standard.Of(verdict)];

    public static string Of(this SheetWords words, Actor actor) => words["actor." + Words<Actor>.Standard.Of(actor)];

    public static string Of(this SheetWords words, Severity severity) => words["severity." + Words<Severity>.Standard.Of(severity)];

    /// <summary>Severity in words, the numbers drawn on the cap, and the state where it is not open.</summary>
    public static string Heading(this SheetWords words, Finding finding)
    {
        var marks = finding.Places.Select(place => place.Mark).OfType<int>()
            .Select(mark => mark.ToString(CultureInfo.InvariantCulture));
        return JobWords.Joined(
            words.Of(finding.Severity),
            string.Join(", ", marks),
            finding.State == FindingState.Open ? null : words["state." + Words<FindingState>.Standard.Of(finding.State)]);
    }

    /// <summary>Who has to do what about a finding; null where nobody has to do anything, as where it is solved.</summary>
    public static string? Remedy(this SheetWords words, Finding finding)
    {
        if (finding.Remedy is not { } remedy || finding.State == FindingState.Solved)
            return null;
        var message = remedy.Message
            .Replace("{limit}", finding.Limit.Value is { } limit ? Number(limit) : "", StringComparison.Ordinal)
            .Replace("{unit}", finding.Limit.Unit, StringComparison.Ordinal);
        return words.Say("proof.doThis", ("who", words.Of(remedy.Who)), ("message", message));
    }

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
