using CapPrep.Engine.Checks;
using CapPrep.Engine.Losses;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Production;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence;

/// <summary>The tape that a machine may run, read back and seated again.</summary>
/// <param name="File">What was written.</param>
/// <param name="ReadBack">The written tape as a reader sees it, on the same cap.</param>
/// <param name="NeedlePlan">Which needle sews which of its blocks.</param>
/// <param name="Losses">The proof that it sews what was received.</param>
internal sealed record SewTape(TapeToSew File, Subject ReadBack, IReadOnlyList<NeedleStep> NeedlePlan, LossCheckResult Losses)
{
    /// <summary>Writes the received stitches for the machine and proves that they come back as they were.</summary>
    /// <exception cref="EngineFaultException">The written tape does not read back equal.</exception>
    internal static SewTape AsReceived(Subject received, string label)
    {
        var settings = SettingsFor(received, label);
        var needles = Production.NeedlePlan.Of(received);
        return Proved(received, TapeRepair.Rewrite(received.Tape, settings), null, needles, settings);
    }

    /// <summary>Writes the stitches in the order of a plan and proves that nothing is lost by it.</summary>
    /// <exception cref="EngineFaultException">The written tape is not what the plan says, or loses something.</exception>
    internal static SewTape InOrder(Subject received, SewPlan plan, string label)
    {
        var settings = SettingsFor(received, label);
        var file = new TapeToSew(
            Resequencer.Apply(received.Stitches, plan, settings),
            StitchesEqual: false,
            [.. ChangesOf(received, plan, settings)],
            settings.StartAndEnd ?? TapePoint.Origin);
        return Proved(received, file, plan, Production.NeedlePlan.Of(received, plan), settings);
    }

    private static SewTape Proved(
        Subject received, TapeToSew file, SewPlan? plan, IReadOnlyList<NeedleStep> needles, RepairSettings settings)
    {
        var proof = LossCheck.Of(new()
        {
            Received = received.Tape,
            Written = file.Bytes,
            Plan = plan,
            Settings = settings,
            ThreadOfBlock = ThreadNumbers.Of(Production.NeedlePlan.ThreadsOf(received.Ticket.Received), received.Stitches.Blocks),
            NeedleOfBlock = [.. Production.NeedlePlan.Of(received).Select(step => step.Needle)],
            NeedlePlan = needles,
            MachineTies = received.Setup.Machine.AddsTies,
            Field = plan is null ? null : FieldOf(received),
        });
        if (proof.Clauses.FirstOrDefault(clause => !clause.Passed) is { } failed)
            throw new EngineFaultException($"The written tape fails the loss check ({failed.Clause}): {failed.Fault}");
        return new(file, ReadBackOf(file, received, needles, settings.StartAndEnd ?? TapePoint.Origin), needles, proof);
    }

    /// <summary>Where the needle may travel, as a box on the received tape.</summary>
    private static Box FieldOf(Subject received)
    {
        var field = SewableArea.TravelFieldOf(received.Setup.Frame);
        return Box.Of(received.Seated.OnTape(new(field.Left, field.Bottom))).Union(received.Seated.OnTape(new(field.Right, field.Top)));
    }

    private static IEnumerable<TapeChange> ChangesOf(Subject received, SewPlan plan, RepairSettings settings)
    {
        if (received.Tape.Quirks.Any(quirk => TapeRules.OfContainer.Contains(quirk.Rule)))
            yield return TapeChange.Container;
        yield return TapeChange.Label;
        yield return TapeChange.Order;
        if (plan.TiesAdded > 0)
            yield return TapeChange.Ties;
        yield return TapeChange.Trims;
        if (settings.StartAndEnd is not null)
            yield return TapeChange.StartEnd;
        if (settings.Turn180)
            yield return TapeChange.Turned180;
    }

    /// <summary>
    /// False when a stitch is so much longer than the machine's longest move that the jumps leading there would cut
    /// the thread.
    /// </summary>
    internal static bool CanWrite(Subject received) => LongestThread(received.Stitches) <= LongestStitchOf(received.Setup.Machine);

    /// <summary>The longest stitch or float of a tape along one axis.</summary>
    internal static Tenths LongestThread(StitchSequence stitches)
    {
        var longest = 0;
        for (var i = 1; i < stitches.Count; i++)
        {
            if (stitches.Relations[i] == Relation.Thread)
                longest = Math.Max(longest, (stitches.At(i) - stitches.At(i - 1)).Reach);
        }

        return new Tenths(longest);
    }

    /// <summary>The longest stitch along one axis that a machine sews without taking it for a trim.</summary>
    internal static Tenths LongestStitchOf(Machine machine) =>
        new(RepairSettings.For(machine.Tape, "").MaxMove * machine.Tape.TrimCount);

    private static RepairSettings SettingsFor(Subject received, string label)
    {
        var machine = received.Setup.Machine.Tape;
        return RepairSettings.For(machine, label) with
        {
            Turn180 = IsWrittenTurned(machine) != received.Seated.TapeIsTurned,
            StartAndEnd = StartFor(received),
        };
    }

    /// <summary>Whoever turns the design, it is turned once: by the machine, or here.</summary>
    private static bool IsWrittenTurned(MachineTape machine) => machine.Turn180 == TurnedBy.Tape;

    /// <summary>
    /// Bottom of the design on the center mark, in units of the received tape; null where the rule book or the ticket
    /// leaves start and end alone. It stays in the field even when the design does not.
    /// </summary>
    private static TapePoint? StartFor(Subject received)
    {
        var seated = received.Seated;
        if (received.Setup.Rules.SewOrder.StartEndAtBottomCenter != true
            || received.Ticket.SewOrderMode == SewOrderMode.AsReceived)
            return null;
        var field = SewableArea.TravelFieldOf(received.Setup.Frame);
        return seated.OnTape(new TapePoint(0, Math.Clamp(seated.Box.Bottom, field.Bottom, field.Top)));
    }

    private static Subject ReadBackOf(TapeToSew file, Subject received, IReadOnlyList<NeedleStep> needles, TapePoint start)
    {
        var trimJumps = received.Setup.Machine.Tape.TrimCount;
        var read = TapeReader.Read(file.Bytes, new TapeReading { TrimJumps = trimJumps, MaxRecords = int.MaxValue });
        if (!read.Succeeded)
            throw new EngineFaultException($"The written tape cannot be read: {read.Violations[0].Message}");
        var startOnCap = received.Seated.OnCap(start);
        var seated = received.Seated with
        {
            TapeIsTurned = IsWrittenTurned(received.Setup.Machine.Tape),
            Offset = startOnCap,
            Origin = startOnCap,
        };
        return new Subject(read.Value, StitchSequence.Of(read.Value, trimJumps), Renumbered(received.Ticket, needles), received.Setup, seated);
    }

    /// <summary>The ticket with its threads at the blocks that sew them now.</summary>
    internal static ResolvedTicket Renumbered(ResolvedTicket ticket, IReadOnlyList<NeedleStep> needles)
    {
        if (needles.All(step => step.Step == step.Block))
            return ticket;
        TicketThread[] threads = [.. needles.Where(step => step.Thread is not null).Select(step => step.Thread! with { Block = step.Step })];
        return ticket with { Received = ticket.Received with { Threads = threads } };
    }
}
