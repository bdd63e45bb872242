using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>Ties hold the thread without showing: few, short, inside their element.</summary>
internal static class TieClause
{
    private const int MostPenetrations = 4;

    // 1.2 mm.
    private const int Reach = 12;

    // An end is tied when its three stitches are not longer than that and stay within 1.6 mm.
    private const int TieStitches = 3;
    private const int Near = 16;

    internal static ClauseResult Check(LossSubject subject)
    {
        var plan = subject.Request.Plan;
        if (plan is null)
            return new(LossClause.Ties, 0, null);
        var wrong = plan.Steps.Select(step => Fault(subject, plan, step)).FirstOrDefault(fault => fault is not null);
        return new(LossClause.Ties, plan.TiesAdded, wrong ?? Loose(subject, plan));
    }

    /// <summary>An end that is cut anew and not tied.</summary>
    private static string? Loose(LossSubject subject, SewPlan plan)
    {
        if (subject.Request.MachineTies)
            return null;
        for (var at = 0; at < plan.Steps.Count; at++)
        {
            var step = plan.Steps[at];
            if (subject.Meant.PlaceOf(step.Element) is not { } place)
                continue;
            var span = plan.Spans[place];
            int[] points = [.. Enumerable.Range(span.First, span.Last - span.First + 1)];
            var isCutBehind = at == plan.Steps.Count - 1 || IsCut(plan.Steps[at + 1].Connection);
            if ((IsCut(step.Connection) && step.TieIn.Count == 0 && WasJoined(subject, span.First) && !HoldsItself(subject, points))
                || (isCutBehind && step.TieOff.Count == 0 && WasJoined(subject, span.Last + 1) && !HoldsItself(subject, [.. points.Reverse()])))
                return FormattableString.Invariant($"Element {step.Element + 1} is cut anew and not tied.");
        }

        return null;
    }

    private static bool IsCut(Connection connection) => connection is Connection.None or Connection.Cut or Connection.Stop;

    /// <summary>The received thread goes on to this penetration from the one before.</summary>
    private static bool WasJoined(LossSubject subject, int index) =>
        index < subject.Received.Count && subject.Received.Relations[index] == Relation.Thread;

    /// <summary>The end has a tie of its own, or lies in one hole where none can be made.</summary>
    private static bool HoldsItself(LossSubject subject, int[] fromEnd)
    {
        var end = subject.Received.At(fromEnd[0]);
        if (fromEnd.All(point => subject.Received.At(point) == end))
            return true;
        return fromEnd.Length > TieStitches && Enumerable.Range(1, TieStitches).All(k =>
            IsWithin(subject.Received.At(fromEnd[k]), subject.Received.At(fromEnd[k - 1]), Reach)
            && IsWithin(subject.Received.At(fromEnd[k]), end, Near));
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
        && ties.All(tie => IsWithin(tie, subject.Received.At(end), Reach) && IsInside(subject, tie, span));

    private static bool IsWithin(TapePoint one, TapePoint other, int reach)
    {
        var way = one - other;
        return ((long)way.X * way.X) + ((long)way.Y * way.Y) <= reach * reach;
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
