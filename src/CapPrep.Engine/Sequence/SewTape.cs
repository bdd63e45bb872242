using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence;

/// <summary>The tape that a machine may run, read back and seated again.</summary>
/// <param name="File">What was written.</param>
/// <param name="ReadBack">The written tape as a reader sees it, on the same cap.</param>
internal sealed record SewTape(TapeToSew File, Subject ReadBack)
{
    /// <summary>Writes the received stitches for the machine and proves that they come back as they were.</summary>
    /// <exception cref="EngineFaultException">The written tape does not read back equal.</exception>
    internal static SewTape Write(Subject received, string label)
    {
        var start = StartFor(received);
        var file = TapeRepair.Rewrite(received.Tape, SettingsFor(received, label) with { StartAndEnd = start });
        var readBack = ReadBackOf(file, received, start ?? TapePoint.Origin);
        Prove(received, readBack);
        return new SewTape(file, readBack);
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

    private static Subject ReadBackOf(TapeToSew file, Subject received, TapePoint start)
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
        return new Subject(read.Value, StitchSequence.Of(read.Value, trimJumps), received.Ticket, received.Setup, seated);
    }

    private static void Prove(Subject received, Subject written)
    {
        if (!received.Points.X.SequenceEqual(written.Points.X) || !received.Points.Y.SequenceEqual(written.Points.Y))
            throw new EngineFaultException("The written tape does not lie on the cap where the received one does.");
        if (!received.Stitches.Block.SequenceEqual(written.Stitches.Block))
            throw new EngineFaultException("The written tape changes color elsewhere than the received one.");
        if (!received.Stitches.Relations.SequenceEqual(written.Stitches.Relations))
            throw new EngineFaultException("The written tape cuts thread elsewhere than the received one.");
    }
}
