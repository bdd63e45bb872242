using CapPrep.Engine.Checks;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Verdicts;

/// <summary>One sentence or two for each reader.</summary>
internal static class Summaries
{
    // House: below this share somebody should look at the picture.
    private const double ReadWithoutDoubt = 0.9;

    /// <param name="judgment">Decides who has something to do.</param>
    /// <param name="findings">The whole list.</param>
    /// <param name="firstCap">Told to the lead and the operator.</param>
    /// <param name="job">Ticket, catalog and seating.</param>
    /// <param name="needles">Told to the operator.</param>
    internal static Summary Of(
        Judgment judgment, IReadOnlyList<Finding> findings, FirstCap firstCap, Subject job, IReadOnlyList<NeedleStep> needles)
    {
        var holds = Judgment.OpenHolds(findings);
        var sews = judgment.Sews;
        return new Summary(
            Lead: sews ? SewLead(judgment, findings, firstCap, job) : ReturnLead(judgment, holds),
            Digitizer: judgment.Actors.Contains(Actor.Digitizer) ? Task(holds, Actor.Digitizer) : null,
            Framing: sews ? Framing(job) : judgment.Actors.Contains(Actor.FramingStation) ? Task(holds, Actor.FramingStation) : null,
            Operator: sews ? Operator(job, firstCap, needles) : null,
            OrderDesk: judgment.Actors.Contains(Actor.OrderDesk) ? Task(holds, Actor.OrderDesk) : null);
    }

    private static string SewLead(Judgment judgment, IReadOnlyList<Finding> findings, FirstCap firstCap, Subject job)
    {
        var warns = findings.Where(finding => finding is { State: not FindingState.Solved, Severity: Severity.Warn }).ToArray();
        var first = firstCap.Is switch
        {
            FirstCapIs.Required => "First cap required.",
            FirstCapIs.Advised => "First cap advised.",
            _ => "No first cap needed.",
        };
        var sew = judgment.Verdict == Verdict.SewResequenced ? OurOrder(findings) : "Sew as received.";
        var said = warns.Length == 0 ? $"{sew} No warns. {first}" : $"{sew} {first} {Figure.Count(warns.Length, "warn")}.";
        return Sentences.Fit([
            said,
            AdviceRule.Of(judgment, findings) == Advice.ConsiderReturn ? "Consider returning it: the brief is filled in." : "",
            Doubt(job),
            .. warns.Take(1).Select(warn => warn.Message)]);
    }

    /// <summary>What is different in the order that we sew.</summary>
    private static string OurOrder(IReadOnlyList<Finding> findings)
    {
        string[] gains = [.. findings.Where(finding => finding.State == FindingState.Solved).Select(Gain).OfType<string>().Take(2)];
        return gains.Length == 0 ? "Sew our order." : $"Sew our order: {string.Join(", ", gains)}.";
    }

    private static string? Gain(Finding solved) => solved.Rule switch
    {
        "order.tagline-first" => "bottom line first",
        "order.bottom-up" => "from the bottom up",
        "order.center-out" => "from the center out",
        "order.text-line" => "text from the center out",
        "border.late" => "borders right after their fills",
        _ => null,
    };

    /// <summary>Said where so much of the tape could be something else that a person should look at it.</summary>
    private static string Doubt(Subject job) => job.Reading.AssignedShare >= ReadWithoutDoubt
        ? ""
        : $"{Figure.Plain(100 * (1 - job.Reading.AssignedShare), 0)} % of the stitches could not be read for sure.";

    /// <summary>Only the holds of whoever the verdict goes back to: the others are not theirs to clear.</summary>
    private static string ReturnLead(Judgment judgment, IReadOnlyList<Finding> holds)
    {
        var desk = judgment.Verdict == Verdict.ReturnToOrderDesk ? "order desk" : "digitizer";
        var own = holds.Where(hold => hold.Asks == judgment.Asked).ToArray();
        return own.Length == 0
            ? Sentences.Fit($"Do not sew: no tape can be written for this cap and machine. The {desk} decides.")
            : Sentences.Fit([$"Do not sew: {Figure.Count(own.Length, "point")} for the {desk}.", .. own.Select(hold => hold.Message)]);
    }

    /// <summary>What one of the actors is asked to do about the holds.</summary>
    private static string Task(IReadOnlyList<Finding> holds, Actor actor)
    {
        var own = holds.Where(hold => hold.Remedy?.Who == actor).ToArray();
        return Sentences.Fit([
            .. (own.Length > 0 ? own : holds).Take(1).SelectMany(hold => new[] { hold.Remedy?.Message ?? hold.Message }),
            .. own.Skip(1).Select(hold => hold.Remedy!.Message)]);
    }

    private static string Framing(Subject job) => Sentences.Fit(
        $"Frame {Figure.Count(job.Ticket.Received.Quantity, "cap")}: {Middle(job.Setup.Style!)} on the mark.",
        $"The design's base lies {Base(job.Seated)} above the brim seam.");

    private static string Operator(Subject job, FirstCap firstCap, IReadOnlyList<NeedleStep> needles) => Sentences.Fit(
        job.Setup.Machine.Tape.Turn180 == TurnedBy.Tape
            ? "Tape is turned: do not turn at the machine."
            : "Tape is upright: set the machine to turn for caps.",
        NeedleLine(needles),
        firstCap.Is == FirstCapIs.Required ? "Sew one cap first." : "");

    private static string NeedleLine(IReadOnlyList<NeedleStep> needles)
    {
        var unknown = needles.Count(step => step.Needle is null);
        return unknown == 0
            ? $"Needles {string.Join(" - ", needles.Select(step => Figure.Plain(step.Needle!.Value, 0)))}."
            : $"{Figure.Count(unknown, "color block")} to be threaded.";
    }

    private static string Middle(CapStyle style) => style.CenterSeam is null ? "center" : "center seam";

    private static string Base(SeatedDesign seated) => Figure.Mm(seated.Box.ToMillimeters().Bottom);
}
