using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>What the machine needs: moves it can make, no new long stitch, travel inside the field, start and end as declared.</summary>
internal static class MachineClause
{
    // 12.1 mm, the longest stitch of one record.
    private const int LongestStitch = Tape.MaxMove;

    internal static ClauseResult Check(LossSubject subject) => new(
        LossClause.Machine,
        subject.WrittenTape.RecordCount,
        LongMove(subject) ?? LongStitch(subject) ?? Outside(subject) ?? WrongEnd(subject));

    private static string? LongMove(LossSubject subject)
    {
        var at = TapePoint.Origin;
        for (var record = 0; record < subject.WrittenTape.RecordCount; record++)
        {
            var to = subject.WrittenTape.PositionBehind(record);
            if ((to - at).Reach > subject.Request.Settings.MaxMove)
                return FormattableString.Invariant($"Record {record + 1} moves {(to - at).Reach} tape units.");
            at = to;
        }

        return null;
    }

    private static string? LongStitch(LossSubject subject)
    {
        var longest = Math.Max(LongestStitch, LongestOf(subject.Received));
        var found = LongestOf(subject.Written);
        return found <= longest ? null : FormattableString.Invariant($"A stitch reaches {found} tape units along one axis; the longest received reaches {longest}.");
    }

    private static int LongestOf(StitchSequence stitches)
    {
        var longest = 0;
        for (var i = 1; i < stitches.Count; i++)
        {
            if (stitches.Relations[i] == Relation.Thread)
                longest = Math.Max(longest, (stitches.At(i) - stitches.At(i - 1)).Reach);
        }

        return longest;
    }

    /// <summary>A design that itself lies outside is for its own rule; ways may then reach as far as it does.</summary>
    private static string? Outside(LossSubject subject)
    {
        if (subject.Request.Field is not { } field)
            return null;
        var reach = field.Union(subject.Received.Extents());
        for (var record = 0; record < subject.WrittenTape.RecordCount; record++)
        {
            var at = subject.Back(subject.WrittenTape.PositionBehind(record));
            if (subject.WrittenTape.Kinds[record] != RecordKind.Stitch && !Holds(reach, at))
                return FormattableString.Invariant($"Record {record + 1} leaves the field at ({at.X}, {at.Y}).");
        }

        return null;
    }

    private static bool Holds(Box box, TapePoint at) =>
        at.X >= box.Left && at.X <= box.Right && at.Y >= box.Bottom && at.Y <= box.Top;

    private static string? WrongEnd(LossSubject subject)
    {
        var tape = subject.WrittenTape;
        if (tape.Ending is not { HasEndRecord: true, BytesAfterEnd: 0 })
            return "The tape does not end with one end record.";
        var end = tape.PositionBehind(tape.RecordCount - 1);
        var declared = subject.Request.Settings.StartAndEnd is null && subject.Request.Plan is null
            ? subject.Request.Received.PositionBehind(subject.Request.Received.RecordCount - 1)
            : subject.Back(TapePoint.Origin);
        return subject.Back(end) == declared ? null : FormattableString.Invariant($"The tape ends at ({end.X}, {end.Y}) from its start.");
    }
}
