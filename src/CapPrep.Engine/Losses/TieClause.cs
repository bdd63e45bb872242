using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Writing;

namespace CapPrep.Engine.Losses;

/// <summary>Ties hold the thread without showing: few, short, inside their element.</summary>
internal static class TieClause
{
    private const int MostPenetrations = 4;

    // 1.2 mm.
    private const int Reach = 12;

    internal static ClauseResult Check(LossSubject subject)
    {
        var plan = subject.Request.Plan;
        var fault = plan?.Steps.Select(step => Fault(subject, plan, step)).FirstOrDefault(fault => fault is not null);
        return new(LossClause.Ties, plan?.TiesAdded ?? 0, fault);
    }

    private static string? Fault(LossSubject subject, SewPlan plan, PlanStep step)
    {
        if (step.TieIn.Count + step.TieOff.Count == 0 || subject.Meant.PlaceOf(step.Element) is not { } place)
            return null;
        var span = plan.Spans[place];
        return IsRight(subject, step.TieIn, span.First, span) && IsRight(subject, step.TieOff, span.Last, span)
            ? null
            : FormattableString.Invariant($"A tie of element {step.Element + 1} is too long or lies outside the element.");
    }

    private static bool IsRight(LossSubject subject, IReadOnlyList<TapePoint> ties, int end, PlanSpan span) =>
        ties.Count <= MostPenetrations
        && ties.All(tie => IsNear(tie, subject.Received.At(end)) && IsInside(subject, tie, span));

    private static bool IsNear(TapePoint tie, TapePoint end)
    {
        var way = tie - end;
        return ((long)way.X * way.X) + ((long)way.Y * way.Y) <= Reach * Reach;
    }

    /// <summary>Inside the box of the element, and not a whole cell away from its thread.</summary>
    private static bool IsInside(LossSubject subject, TapePoint tie, PlanSpan span)
    {
        var box = Box.Of(subject.Received.At(span.First));
        for (var i = span.First; i <= span.Last; i++)
            box = box.Union(subject.Received.At(i));
        if (tie.X < box.Left || tie.X > box.Right || tie.Y < box.Bottom || tie.Y > box.Top)
            return false;
        for (var i = span.First + 1; i <= span.Last; i++)
        {
            if (IsNearStitch(tie, subject.Received.At(i - 1), subject.Received.At(i)))
                return true;
        }

        return span.First == span.Last;
    }

    // House: 0.5 mm, the width of a thread and a little.
    private static bool IsNearStitch(TapePoint at, TapePoint from, TapePoint to)
    {
        const double near = 5;
        double dx = to.X - from.X, dy = to.Y - from.Y, px = at.X - from.X, py = at.Y - from.Y;
        var square = (dx * dx) + (dy * dy);
        var along = square == 0 ? 0 : Math.Clamp(((px * dx) + (py * dy)) / square, 0, 1);
        double ox = px - (along * dx), oy = py - (along * dy);
        return (ox * ox) + (oy * oy) <= near * near;
    }
}
