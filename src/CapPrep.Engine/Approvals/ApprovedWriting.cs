using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Production;
using CapPrep.Engine.Sequence;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Approvals;

/// <summary>
/// Writes the tape of an approved sample again for this job and machine: the very stitches, under the job's label.
/// </summary>
internal static class ApprovedWriting
{
    /// <summary>Null when the machine cannot take it.</summary>
    /// <exception cref="EngineFaultException">The approved tape does not belong to the received one.</exception>
    internal static SewTape? Write(Subject received, ApprovedTape approved, string label)
    {
        var stitches = StitchSequence.Of(approved.Tape, received.Setup.Machine.Tape.TrimCount);
        if (stitches.Blocks != approved.Blocks.Count || approved.Blocks.Any(block => block < 1 || block > received.Stitches.Blocks))
            throw new EngineFaultException("The approved tape has other color blocks than the received one.");
        var needles = NeedlesOf(received, stitches, approved);
        var subject = SubjectOf(received, stitches, approved, needles);
        if (!SewTape.CanWrite(subject))
            return null;
        var written = SewTape.AsReceived(subject, label);
        return written with
        {
            File = written.File with
            {
                StitchesEqual = false,
                Changes = [.. ChangesOf(written, received, stitches, approved).Distinct().Order()],
                OriginShift = approved.Start,
            },
            NeedlePlan = needles,
        };
    }

    /// <summary>The approved tape on the same cap, at the same place.</summary>
    private static Subject SubjectOf(Subject received, StitchSequence stitches, ApprovedTape approved, IReadOnlyList<NeedleStep> needles)
    {
        var start = received.Seated.OnCap(approved.Start);
        var seated = received.Seated with { TapeIsTurned = approved.IsTurned, Offset = start, Origin = start };
        return new Subject(approved.Tape, stitches, SewTape.Renumbered(received.Ticket, needles), received.Setup, seated);
    }

    private static IReadOnlyList<NeedleStep> NeedlesOf(Subject received, StitchSequence stitches, ApprovedTape approved)
    {
        var sewn = approved.BlocksOf(received.Reading.Elements);
        var plan = NeedlePlan.Of(received);
        var threads = ThreadNumbers.Of(NeedlePlan.ThreadsOf(received.Ticket.Received), received.Stitches.Blocks);
        return
        [
            .. approved.Blocks.Select((block, at) => plan[block - 1] with
            {
                Step = at + 1,
                Stitches = stitches.Block.Count(at + 1),
                Elements = ElementsOf(received, approved, sewn, at),
                Returns = threads is not null && approved.Blocks.Take(at).Any(earlier => threads[earlier - 1] == threads[block - 1]),
            }),
        ];
    }

    private static IReadOnlyList<int> ElementsOf(Subject received, ApprovedTape approved, IReadOnlyList<int>? sewn, int step) =>
        sewn is null ? [] : [.. (approved.OrderOf(received.Reading.Elements.Count) ?? []).Where(element => sewn[element] == step)];

    private static IEnumerable<TapeChange> ChangesOf(SewTape written, Subject received, StitchSequence stitches, ApprovedTape approved)
    {
        foreach (var change in written.File.Changes)
        {
            if (change != TapeChange.Turned180)
                yield return change;
        }

        yield return TapeChange.Label;
        yield return TapeChange.Order;
        yield return TapeChange.Trims;
        if (stitches.Count != received.Stitches.Count)
            yield return TapeChange.Ties;
        if (approved.Start != TapePoint.Origin || EndOf(received.Tape) != EndInUnitsOf(received, approved))
            yield return TapeChange.StartEnd;
        if (written.ReadBack.Seated.TapeIsTurned != received.Seated.TapeIsTurned)
            yield return TapeChange.Turned180;
    }

    private static TapePoint EndOf(Tape tape) => tape.PositionBehind(tape.RecordCount - 1);

    private static TapePoint EndInUnitsOf(Subject received, ApprovedTape approved)
    {
        var end = EndOf(approved.Tape);
        return approved.Start + (approved.IsTurned == received.Seated.TapeIsTurned ? end : end.Turned());
    }
}
