using CapPrep.Engine.Checks;
using CapPrep.Engine.Production;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence;

/// <summary>Puts together what the sew order of a seated design depends on.</summary>
internal static class OrderRequests
{
    /// <param name="subject">The design as read, seated.</param>
    /// <param name="receivedTrims">Trims of the tape as first received.</param>
    internal static SewOrderRequest For(Subject subject, int receivedTrims)
    {
        var threads = NeedlePlan.ThreadsOf(subject.Ticket.Received);
        var threadOfBlock = ThreadNumbers.Of(threads, subject.Stitches.Blocks);
        return new()
        {
            Stitches = subject.Stitches,
            Reading = subject.Reading,
            Placement = Placement.Of(subject.Seated),
            Budget = BudgetFor(subject, receivedTrims),
            Limits = LimitsFor(subject.Setup),
            Lines = LinePlaces.Of(subject),
            OrderMattersNot = OrderMattersNot(subject),
            DeliberateStops = DeliberateStops.Find(subject.Reading, subject.Stitches, threads, threadOfBlock),
            HasUnknownRecords = subject.Tape.Kinds.Contains(RecordKind.Unknown),
            TrimBy = subject.Setup.Machine.Tape.TrimBy,
            MachineTies = subject.Setup.Machine.AddsTies,
            Mode = subject.Ticket.SewOrderMode,
        };
    }

    private static OrderBudget BudgetFor(Subject subject, int receivedTrims)
    {
        var (machine, asked) = (subject.Setup.Machine, subject.Ticket.Received.SewOrder);
        var heads = Math.Max(1, machine.Heads - machine.HeadsOff.Count);
        return new()
        {
            ReceivedTrims = receivedTrims,
            TrimSeconds = machine.Stops.TrimSeconds,
            ColorChangeSeconds = machine.Stops.ColorChangeSeconds,
            SewingSeconds = 60.0 * subject.Stitches.Count / machine.Speed.CapSpm,
            Loads = Math.Max(1, (subject.Ticket.Received.Quantity + heads - 1) / heads),
            AllowExtraTrims = asked?.AllowExtraTrims ?? subject.Setup.Rules.SewOrder.ExtraTrims,
            ExtraMinutes = asked?.ExtraMinutes,
        };
    }

    /// <summary>On a front without a seam, the way from the middle outward is worth a note only.</summary>
    private static OrderLimits LimitsFor(Setup setup)
    {
        var limits = OrderLimits.Of(setup.Rules);
        if (setup.Style?.CenterSeam is not null)
            return limits;
        return limits with
        {
            Rules = limits.Rules.ToDictionary(
                rule => rule.Key,
                rule => rule.Key is OrderRuleIds.CenterOut or OrderRuleIds.TextLine
                    ? new ShareLimits(rule.Value.Note ?? rule.Value.Warn, null)
                    : rule.Value,
                StringComparer.Ordinal),
        };
    }

    private static string? OrderMattersNot(Subject subject) =>
        subject.Setup.Frame.Holds == FrameHold.FlatClamp ? "The cloth is clamped all round, where the order of sewing moves it little."
        : subject.Ticket.Technique == Technique.Foam ? "Over foam the order belongs to the technique."
        : null;
}
