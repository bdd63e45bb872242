using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>What plan, needle plan and header announce, counted again from the bytes.</summary>
internal static class CountClause
{
    internal static ClauseResult Check(LossSubject subject)
    {
        var counted = Counted(subject).ToArray();
        var wrong = counted.FirstOrDefault(one => one.Due != one.Found);
        return new(
            LossClause.Counts,
            counted.Length,
            wrong is null ? null : FormattableString.Invariant($"{wrong.What}: {wrong.Due} was announced, {wrong.Found} was counted."));
    }

    private static IEnumerable<Counting> Counted(LossSubject subject) =>
        OfPlan(subject).Concat(OfNeedlePlan(subject)).Concat(OfExtents(subject)).Concat(OfHeader(subject));

    private static IEnumerable<Counting> OfPlan(LossSubject subject)
    {
        yield return new("penetrations", subject.Meant.Count, subject.Written.Count);
        yield return new("color stops", subject.Meant.CountOf(Relation.Stop), subject.WrittenTape.Kinds.Count(RecordKind.ColorStop));
        yield return new("trims", subject.Meant.CountOf(Relation.Cut), subject.Written.Relations.Count(Relation.Cut));
        if (subject.Request.Plan is not { } plan)
            yield break;
        yield return new("blocks", plan.Blocks.Count, subject.Written.Blocks);
        foreach (var block in plan.Blocks)
            yield return new(FormattableString.Invariant($"penetrations of block {block.Step}"), block.Stitches, subject.Written.Block.Count(block.Step));
    }

    private static IEnumerable<Counting> OfNeedlePlan(LossSubject subject)
    {
        yield return new("rows of the needle plan", subject.Request.NeedlePlan.Count, subject.Written.Blocks);
        foreach (var step in subject.Request.NeedlePlan)
            yield return new(FormattableString.Invariant($"penetrations of needle plan row {step.Step}"), step.Stitches, subject.Written.Block.Count(step.Step));
    }

    private static IEnumerable<Counting> OfExtents(LossSubject subject)
    {
        var (due, found) = (subject.Received.Extents(), BoxOf(subject.At));
        yield return new("left edge", due.Left, found.Left);
        yield return new("lower edge", due.Bottom, found.Bottom);
        yield return new("right edge", due.Right, found.Right);
        yield return new("upper edge", due.Top, found.Top);
    }

    private static IEnumerable<Counting> OfHeader(LossSubject subject)
    {
        var (header, tape, box) = (subject.WrittenTape.Header, subject.WrittenTape, subject.Written.Extents());
        var end = tape.PositionBehind(tape.RecordCount - 1);
        yield return new("records in the header", header.Records ?? -1, tape.RecordCount);
        yield return new("color stops in the header", header.ColorStops ?? -1, tape.Kinds.Count(RecordKind.ColorStop));
        yield return new("way to the right in the header", header.PlusX ?? -1, Math.Max(0, box.Right));
        yield return new("way to the left in the header", header.MinusX ?? -1, Math.Max(0, -box.Left));
        yield return new("way up in the header", header.PlusY ?? -1, Math.Max(0, box.Top));
        yield return new("way down in the header", header.MinusY ?? -1, Math.Max(0, -box.Bottom));
        yield return new("end across in the header", header.EndX ?? int.MinValue, end.X);
        yield return new("end up in the header", header.EndY ?? int.MinValue, end.Y);
    }

    private static Box BoxOf(IReadOnlyList<TapePoint> points) =>
        points.Aggregate((Box?)null, (box, point) => box?.Union(point) ?? Box.Of(point)) ?? Box.Of(TapePoint.Origin);

    private sealed record Counting(string What, long Due, long Found);
}
