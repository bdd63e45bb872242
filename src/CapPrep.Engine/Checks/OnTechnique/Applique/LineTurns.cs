using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnTechnique.Applique;

/// <summary>Finds the open lines of a design and tells how often each goes round.</summary>
internal sealed class LineTurns
{
    // House, tape units: how far apart the ends of a closed line may be, and the least shape that fabric is laid on.
    private const int EndsWithin = 20;
    private const int LeastSide = 80;

    // A zigzag is no satin when its needle points on one side are so far apart, mm.
    private const double OpenFromPitch = 1;

    // A line may begin with so many stitches that lead to it.
    private const int LeadIn = 40;

    // More lines than any design is laid out with; the rest is not looked at.
    private const int MostTurns = 200;

    private readonly DesignReading _reading;
    private readonly StitchSequence _stitches;

    private LineTurns(DesignReading reading, StitchSequence stitches) => (_reading, _stitches) = (reading, stitches);

    /// <summary>In received order.</summary>
    internal static IReadOnlyList<LineTurn> Of(DesignReading reading, StitchSequence stitches)
    {
        var lines = new LineTurns(reading, stitches);
        return [.. lines.Runs().SelectMany((run, index) => lines.Turns(index, run.Interval, run.LineTo)).Take(MostTurns)];
    }

    /// <summary>Stitches from edge to edge that hide the cloth.</summary>
    internal static bool IsCover(Piece piece) => piece.Class == StitchClass.Satin && piece.PitchMm < OpenFromPitch;

    /// <summary>Open spans that follow each other in one strand, and how far they begin with a line.</summary>
    private IEnumerable<(Interval Interval, int LineTo)> Runs()
    {
        (Interval Interval, int LineTo)? run = null;
        foreach (var span in _reading.Spans)
        {
            if (run is { } before && IsOpen(span) && GoesOn(before.Interval.Last, span.First))
            {
                run = (before.Interval with { Last = span.Last }, before.LineTo == before.Interval.Last && IsLine(span) ? span.Last : before.LineTo);
                continue;
            }

            if (run is { } whole)
                yield return whole;
            run = IsOpen(span) ? (new(span.First, span.Last), IsLine(span) ? span.Last : span.First - 1) : null;
        }

        if (run is { } last)
            yield return last;
    }

    private bool GoesOn(int last, int first) => first == last + 1 && _stitches.Relations[first] == Relation.Thread;

    private bool IsOpen(Span span) => span.Class switch
    {
        StitchClass.Fill => false,
        StitchClass.Satin => span.Piece is { } piece && span.Role == SpanRole.Visible && !IsCover(_reading.Pieces[piece]),
        _ => true,
    };

    private static bool IsLine(Span span) => span.Class is StitchClass.Running or StitchClass.Retraced;

    /// <summary>Ways round of the line, and what is left: a zigzag behind it, or the whole when it never closes.</summary>
    private IEnumerable<LineTurn> Turns(int index, Interval run, int lineTo)
    {
        if (run.Count < 3)
            yield break;
        var (from, found) = (run.First, false);
        while (NextTurn(from, lineTo, found ? 1 : LeadIn) is { } turn)
        {
            yield return Turn(index, turn, isLine: true, isClosed: true);
            (from, found) = (turn.Last, true);
        }

        if (!found || lineTo < run.Last)
            yield return Turn(index, new(from, run.Last), isLine: lineTo == run.Last, isClosed: false);
    }

    private LineTurn Turn(int run, Interval interval, bool isLine, bool isClosed) =>
        new(run, interval, _stitches.Block[interval.First], isClosed, isLine, _stitches.BoxOf(interval), _stitches.ThreadOf(interval));

    /// <summary>The first way round that begins at one of so many penetrations.</summary>
    private Interval? NextTurn(int from, int last, int tries)
    {
        for (var start = from; start < Math.Min(from + tries, last); start++)
        {
            if (EndOfTurn(start, last) is { } end)
                return new(start, end);
        }

        return null;
    }

    private int? EndOfTurn(int start, int last)
    {
        var box = Box.Of(_stitches.At(start));
        for (var i = start + 1; i <= last; i++)
        {
            box = box.Union(_stitches.At(i));
            if (Math.Min(box.Width, box.Height) < LeastSide || !IsNear(start, i))
                continue;
            while (i < last && FromStart(start, i + 1) < FromStart(start, i))
                i++;
            return i;
        }

        return null;
    }

    private bool IsNear(int start, int point) => FromStart(start, point) <= EndsWithin * EndsWithin;

    private long FromStart(int start, int point) => Fine.Square(_stitches.At(point) - _stitches.At(start));
}
