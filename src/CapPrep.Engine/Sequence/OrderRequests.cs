using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence;

/// <summary>Puts together what the sew order of a seated design depends on.</summary>
internal static class OrderRequests
{
    /// <param name="subject">The design as read, seated.</param>
    /// <param name="first">The tape as first received.</param>
    /// <param name="shift">How the cloth moves, where that is known.</param>
    internal static SewOrderRequest For(Subject subject, StitchSequence first, ShiftModel? shift = null) => new()
    {
        Stitches = subject.Stitches,
        Reading = subject.Reading,
        Placement = FromSeam(subject.Seated),
        Budget = BudgetFor(subject, first),
        Limits = LimitsFor(subject),
        Lines = LinePlaces.Of(subject),
        OrderMattersNot = OrderMattersNot(subject),
        DeliberateStops = [.. subject.DeliberateStops.Select(stop => stop.Behind)],
        KeptInPlace = OverFoam(subject),
        HasUnknownRecords = subject.Tape.Kinds.Contains(RecordKind.Unknown),
        TrimBy = subject.Setup.Machine.Tape.TrimBy,
        MachineTies = subject.Setup.Machine.AddsTies,
        Mode = subject.Ticket.SewOrderMode,
        Shift = shift,
    };

    /// <summary>Elements over foam of a design that is not all foam work.</summary>
    private static IReadOnlyList<int> OverFoam(Subject subject) => OrderMattersNot(subject) is not null
        ? []
        : [.. subject.Reading.Elements.Where(element => subject.Foam.ContainsPoint(element.First)).Select(element => element.Index)];

    /// <summary>On a panel beside the seam the seam is still what everything is sewn away from (fact row Q10).</summary>
    private static Placement FromSeam(SeatedDesign seated)
    {
        var placement = Placement.Of(seated);
        return placement with { Offset = placement.Offset + new TapePoint(SewableArea.XInFrame(seated.Zone), 0) };
    }

    private static OrderBudget BudgetFor(Subject subject, StitchSequence first)
    {
        var (machine, asked) = (subject.Setup.Machine, subject.Ticket.Received.SewOrder);
        var heads = Math.Max(1, machine.Heads - machine.HeadsOff.Count);
        return new()
        {
            ReceivedTrims = first.Relations.Count(Relation.Cut),
            ReceivedColorChanges = first.Relations.Count(Relation.Stop),
            TrimSeconds = machine.Stops.TrimSeconds,
            ColorChangeSeconds = machine.Stops.ColorChangeSeconds,
            SewingSeconds = 60.0 * subject.Stitches.Count / machine.Speed.CapSpm,
            Loads = Math.Max(1, (subject.Ticket.Received.Quantity + heads - 1) / heads),
            AllowExtraTrims = asked?.AllowExtraTrims ?? subject.Setup.Rules.SewOrder.ExtraTrims,
            AllowExtraColorChanges = asked?.AllowExtraColorChanges ?? subject.Setup.Rules.SewOrder.ExtraColorChanges ?? 0,
            ExtraMinutes = asked?.ExtraMinutes,
        };
    }

    /// <summary>
    /// On a front without a seam, the way from the middle outward is worth a note only. What looks like foam work is
    /// not judged.
    /// </summary>
    private static OrderLimits LimitsFor(Subject subject)
    {
        var limits = OrderLimits.Of(subject.Setup.Rules);
        if (subject.Foam.IsGuessed)
            return limits with { Rules = new Dictionary<string, ShareLimits>() };
        if (subject.Setup.Style?.CenterSeam is not null)
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
        : subject.Foam.IsGuessed ? "It looks like foam work, where the order belongs to the technique."
        : null;
}
