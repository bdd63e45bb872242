using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Sequence.Writing;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Losses;

/// <summary>
/// Paints both tapes and compares what lies over what, cell by cell. Cells of dropped ways, new links and ties are
/// left out. Two elements of different threads may change places in three cells; two of one thread where that does
/// not show, or where the plan lists them as relaxed. Floats and links that another thread hid stay hidden; those
/// that lay open may be covered.
/// </summary>
internal sealed class TopView
{
    // As for layers: from 4 cells on across threads; within one thread from 1 mm2 or a tenth of the smaller on.
    private const int CellsAcrossThreads = 4;
    private const int CellsInThread = 16;
    private const int ShareInThread = 10;

    // What hides a way in so many cells, or a tenth of it, must go on hiding it.
    private const int HidingCells = 6;
    private const int HidingShare = 10;

    // A float of up to 1 mm lies like a stitch.
    private const int ShortFloat = 10;

    private readonly LossSubject _subject;
    private readonly SewPlan _plan;
    private readonly PaintedCells _received;
    private readonly PaintedCells _written;
    private readonly HashSet<RelaxedPair> _relaxed;

    /// <summary>For every layer the place of its span in the plan.</summary>
    private readonly int[] _places;

    private TopView(LossSubject subject, SewPlan plan)
    {
        (_subject, _plan) = (subject, plan);
        var box = subject.At.Aggregate(subject.Received.Extents(), (all, at) => all.Union(at));
        _places = [.. Enumerable.Range(0, plan.Spans.Count), .. PlacesOfPoints(subject, plan), .. Enumerable.Range(0, plan.Spans.Count)];
        var design = subject.Received.Extents();
        _received = new(new(design.Left, design.Bottom), box, _places.Length);
        _written = new(new(design.Left, design.Bottom), box, _places.Length);
        _relaxed = [.. plan.Relaxed];
        PaintReceived();
        PaintWritten();
    }

    internal static ClauseResult Check(LossSubject subject)
    {
        if (subject.Request.Plan is { } plan)
            return new TopView(subject, plan).Compared();
        return new(
            LossClause.TopView,
            0,
            subject.IsAsReceived ? null : "Without a plan nothing may change.");
    }

    private void PaintReceived()
    {
        for (var place = 0; place < _plan.Spans.Count; place++)
        {
            var span = _plan.Spans[place];
            for (var i = span.First; i <= span.Last; i++)
                _received.Line(i > span.First ? _subject.Received.At(i - 1) : _subject.Received.At(i), _subject.Received.At(i), LayerOf(place, i));
        }

        foreach (var link in _subject.CutLinks)
        {
            for (var i = link.First; i <= Math.Min(link.Last + 1, _subject.Received.Count - 1); i++)
                LeaveOut(_subject.Received.At(i - 1), _subject.Received.At(i));
        }
    }

    private void PaintWritten()
    {
        for (var i = 0; i < Math.Min(_subject.Meant.Count, _subject.At.Count); i++)
        {
            var (due, before) = (_subject.Meant[i], i > 0 ? _subject.Meant[i - 1] : default);
            var (from, to) = (_subject.At[Math.Max(0, i - 1)], _subject.At[i]);
            if (due.Source is { } source && i > 0 && before.Source == source - 1 && before.Span == due.Span)
                _written.Line(from, to, LayerOf(due.Span, source));
            else if (due.Source is { } first)
                _written.Line(to, to, LayerOf(due.Span, first));
            if (due.Relation == Relation.Thread && (due.Source is null || before.Source is null || before.Source != due.Source - 1))
                LeaveOut(from, to);
        }
    }

    /// <summary>Stitches of an element count by their span; every float and every link, being ways, by itself.</summary>
    private int LayerOf(int place, int point) =>
        _plan.Spans[place].Element is null ? _places.Length - _plan.Spans.Count + place
        : IsFloat(point, _plan.Spans[place]) ? _plan.Spans.Count + point
        : place;

    private static int[] PlacesOfPoints(LossSubject subject, SewPlan plan)
    {
        var places = new int[subject.Received.Count];
        for (var place = 0; place < plan.Spans.Count; place++)
        {
            for (var point = plan.Spans[place].First; point <= plan.Spans[place].Last; point++)
                places[point] = place;
        }

        return places;
    }

    private bool IsFloat(int point, PlanSpan span)
    {
        if (point == span.First || _subject.Received.Jumps[point] == 0)
            return false;
        var way = _subject.Received.At(point) - _subject.Received.At(point - 1);
        return ((long)way.X * way.X) + ((long)way.Y * way.Y) > ShortFloat * ShortFloat;
    }

    private void LeaveOut(TapePoint from, TapePoint to)
    {
        _received.LeaveOut(from, to);
        _written.LeaveOut(from, to);
    }

    private ClauseResult Compared()
    {
        var turned = new SortedDictionary<(int One, int Other), int>();
        for (var cell = 0; cell < _received.Cells; cell++)
        {
            if (_received.IsLeftOut(cell))
                continue;
            int[] before = _received.BottomUp(cell);
            int[] after = _written.BottomUp(cell);
            if (before.AsSpan().SequenceEqual(after))
                continue;
            if (!before.Order().SequenceEqual(after.Order()))
                return Result("Thread lies where none lay, or none where some lay.");
            NoteTurned(before, after, turned);
        }

        return Result(turned.Where(pair => Shows(pair.Key.One, pair.Key.Other, pair.Value)).Select(pair => Say(pair.Key, pair.Value)).FirstOrDefault());
    }

    private static void NoteTurned(int[] before, int[] after, SortedDictionary<(int One, int Other), int> turned)
    {
        for (var one = 0; one < before.Length; one++)
        {
            for (var other = one + 1; other < before.Length; other++)
            {
                if (Array.IndexOf(after, before[one]) > Array.IndexOf(after, before[other]))
                    turned[(before[one], before[other])] = turned.GetValueOrDefault((before[one], before[other])) + 1;
            }
        }
    }

    /// <summary>It can be seen that the lower of the two now lies on top.</summary>
    private bool Shows(int lower, int upper, int cells)
    {
        if (IsWay(upper))
            return false;
        var (first, second) = (_plan.Spans[_places[lower]], _plan.Spans[upper]);
        var sameThread = ThreadOf(first) == ThreadOf(second);
        if (IsWay(lower))
            return !sameThread && (cells >= HidingCells || cells * HidingShare >= _received.AreaOf(lower));
        if (!sameThread)
            return cells >= CellsAcrossThreads;
        var (element, otherElement) = (first.Element!.Value, second.Element!.Value);
        if (_relaxed.Contains(new(element, otherElement)) || _relaxed.Contains(new(otherElement, element)))
            return false;
        return cells >= CellsInThread || cells * ShareInThread >= Math.Min(_received.AreaOf(lower), _received.AreaOf(upper));
    }

    private bool IsWay(int layer) => layer >= _plan.Spans.Count;

    private int ThreadOf(PlanSpan span) => _subject.ThreadOf(_subject.Received.Block[Math.Min(span.First, _subject.Received.Count - 1)]);

    private string Say((int One, int Other) pair, int cells) => FormattableString.Invariant(
        $"The span from penetration {_plan.Spans[_places[pair.Other]].First + 1} no longer lies over {(IsWay(pair.One) ? "the way in the one" : "the one")} from {_plan.Spans[_places[pair.One]].First + 1} in {cells} cells of {_received.AreaOf(pair.One)} and {_received.AreaOf(pair.Other)}.");

    private ClauseResult Result(string? fault) => new(LossClause.TopView, _received.Painted, fault);
}
