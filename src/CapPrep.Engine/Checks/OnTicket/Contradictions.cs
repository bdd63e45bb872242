using CapPrep.Engine.Sequence;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnTicket;

/// <summary>Orders that cannot be meant as they are written: the order desk has to say what is right.</summary>
internal static class Contradictions
{
    /// <summary>The article number belongs to no style, or the frame is not for the style.</summary>
    internal static readonly Check Style = Check.Telling("ticket.style", Needs.TapeAndTicket, (subject, _) => FindStyle(subject));

    /// <summary>The style has no zone at the location, or the frame cannot hold it there.</summary>
    internal static readonly Check Location = Check.Telling("ticket.location", Needs.TapeAndTicket, (subject, _) => FindLocation(subject));

    /// <summary>The machine does not take the frame or the tape, or has no head to sew with.</summary>
    internal static readonly Check Machine = Check.Telling("ticket.machine", Needs.TapeAndTicket, (subject, _) => FindMachine(subject));

    /// <summary>Fewer caps than ordered or none to spare, or sizes of a lot that do not add up.</summary>
    internal static readonly Check Quantity = Check.Telling("ticket.quantity", Needs.TapeAndTicket, (subject, rule) => FindQuantity(subject.Ticket.Received, rule));

    private static IEnumerable<Occurrence> FindStyle(Subject subject)
    {
        var (style, frame) = (subject.Setup.Style, subject.Setup.Frame);
        if (style is null)
            yield return Here("/capSku", UnknownArticle(subject));
        else if (frame.ForStyles.Count > 0 && !frame.ForStyles.Contains(style.Id))
            yield return Here("/capFrame", $"Frame {frame.Id} is not for cap style {style.Id}.");
    }

    private static IEnumerable<Occurrence> FindLocation(Subject subject)
    {
        var (location, style, frame) = (subject.Ticket.Location, subject.Setup.Style, subject.Setup.Frame);
        if (style is not null && style.ZoneOf(location) is null)
            yield return Here("/location", $"Cap style {style.Id} has no zone {Spoken.Of(location)}.");
        if (!frame.Locations.Contains(location))
            yield return Here("/location", $"Frame {frame.Id} does not hold a cap for work {Spoken.Of(location)}.");
    }

    private static IEnumerable<Occurrence> FindMachine(Subject subject)
    {
        var (machine, frame) = (subject.Setup.Machine, subject.Setup.Frame);
        if (!machine.CapFrames.Contains(frame.Id))
            yield return Here("/capFrame", $"Machine {machine.Id} does not take frame {frame.Id}.");
        if (Enumerable.Range(1, machine.Heads).All(machine.HeadsOff.Contains))
            yield return Here("/machine", $"All heads of machine {machine.Id} are off.");
        foreach (var refused in FindCapacity(subject, machine))
            yield return refused;
    }

    private static IEnumerable<Occurrence> FindCapacity(Subject subject, Machine machine)
    {
        var (stitches, stops) = (subject.Stitches.Count, Math.Max(0, subject.Stitches.Blocks - 1));
        if (stitches > machine.MaxStitches)
            yield return Here("/machine", $"The tape has {Figure.Count(stitches, "stitch", "stitches")}; machine {machine.Id} takes {Figure.Plain(machine.MaxStitches.Value, 0)}.");
        if (SewTape.LongestThread(subject.Stitches) is var longest && longest > SewTape.LongestStitchOf(machine))
            yield return Here("/machine", $"The tape has a stitch of {Figure.Mm(longest.Millimeters)}; machine {machine.Id} takes {Figure.Mm(SewTape.LongestStitchOf(machine).Millimeters)}.");
        if (stops > machine.MaxStops)
            yield return Here("/machine", $"The tape has {Figure.Count(stops, "color stop")}; machine {machine.Id} takes {Figure.Plain(machine.MaxStops.Value, 0)}.");
    }

    private static IEnumerable<Occurrence> FindQuantity(Ticket ticket, RuleInForce rule)
    {
        var spare = Math.Max(rule.Parameter("spareCapsAtLeast"), Math.Ceiling(ticket.Quantity * rule.Parameter("spareShare")));
        if (ticket.Blanks < ticket.Quantity + spare)
            yield return Here("/blanks", $"{Figure.Count(ticket.Quantity, "cap")} ordered, {Figure.Plain(ticket.Blanks.Value, 0)} in the box; {Figure.Plain(spare, 0)} to spare are wanted.") with
            {
                Level = ticket.Blanks < ticket.Quantity ? Severity.Hold : Severity.Note,
            };
        var lots = ticket.CapLots ?? [];
        for (var i = 0; i < lots.Count; i++)
        {
            var sizes = lots[i].Sizes.Sum(size => size.Quantity);
            if (lots[i].Sizes.Count > 0 && sizes != lots[i].Quantity)
                yield return Here($"/capLots/{Figure.Plain(i, 0)}/sizes", $"The sizes of lot {Figure.Plain(i + 1, 0)} add up to {Figure.Count(sizes, "cap")}, its quantity is {Figure.Plain(lots[i].Quantity, 0)}.");
        }
    }

    private static string UnknownArticle(Subject subject)
    {
        var near = subject.Setup.StyleSuggestions;
        return $"No cap style carries article {subject.Ticket.Received.CapSku}."
            + (near.Count == 0 ? "" : $" Nearest: {string.Join(", ", near)}.");
    }

    private static Occurrence Here(string pointer, string text) => new(Subject.InTicket(pointer)) { Level = Severity.Hold, Text = text };
}
