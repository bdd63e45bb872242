using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Lettering.Limbs;

/// <summary>Finds the limbs of a design, thread by thread.</summary>
internal sealed class LimbReader(StitchSequence stitches, DesignReading reading, CapPoints points)
{
    /// <summary>Most limbs of one set; above, every second, third, ... is looked at.</summary>
    private const int Most = 2000;

    // Fewer rows may be a letter that goes to and fro.
    private const int FewRows = 16;

    // Stitches of a letter may be written as moves of up to 4 mm, tape units.
    private const int LongestFloat = 40;

    // Penetrations of a tie and of the rows that it begins on.
    private const int LongestTie = 10;

    // A line so many times as long as its box is wide and high together is an area sewn in turns.
    private const int LongestLine = 10;

    // An area longer than this many widths is a column with split rows.
    private const int ColumnLengthTenths = 15;

    /// <summary>Sets of satin first, then lines, then areas; within a make by thread.</summary>
    public IEnumerable<LimbSet> Read() =>
        from make in new[] { LetterMake.Satin, LetterMake.Running, LetterMake.Fill }
        from thread in reading.Elements.Select(element => element.Thread).Distinct().Order()
        let limbs = Limbs(make, thread)
        where limbs.Count > 0
        select new LimbSet(thread, make, limbs);

    private IReadOnlyList<Limb> Limbs(LetterMake make, int thread)
    {
        var cutter = new LimbCutter();
        if (make == LetterMake.Running)
            AddLines(cutter, thread);
        else
            AddColumns(cutter, make == LetterMake.Satin ? StitchClass.Satin : StitchClass.Fill, thread);
        var step = (cutter.Limbs.Count + Most - 1) / Most;
        IReadOnlyList<Limb> limbs = step <= 1 ? cutter.Limbs
            : [.. cutter.Limbs.Where((_, index) => index % step == 0).Select((limb, index) => limb with { Index = index })];
        return make == LetterMake.Satin ? LimbJoiner.Joined(limbs) : limbs;
    }

    private void AddColumns(LimbCutter cutter, StitchClass @class, int thread)
    {
        foreach (var piece in reading.Pieces.Where(piece => piece.Class == @class && ThreadOf(piece.First) == thread))
        {
            Knot[] rows = [.. WithTies(piece.RowsInOrder).Select(row => new Knot(points.At(row.First), points.At(row.Last), row))];
            if (rows.Length == 0)
                continue;
            if (@class == StitchClass.Satin || IsColumn(rows))
                cutter.AddRows(rows);
            else
                cutter.AddArea(rows, 0);
        }
    }

    /// <summary>The rows, and the stitches of a tie before the first and behind the last: they hold the end of the column.</summary>
    private IEnumerable<Interval> WithTies(IReadOnlyList<Interval> rows)
    {
        if (rows.Count == 0)
            return rows;
        var (before, behind) = (_ties.GetValueOrDefault(rows[0].First - 1), _ties.GetValueOrDefault(rows[^1].Last + 1));
        return Stitches(before).Concat(rows).Concat(Stitches(behind));
    }

    private static IEnumerable<Interval> Stitches(Span? tie) => tie is null
        ? []
        : Enumerable.Range(tie.First, tie.Penetrations - 1).Select(i => new Interval(i, i + 1));

    private static bool IsColumn(Knot[] rows)
    {
        var width = Median.Of([.. rows.Select(row => row.Length)]);
        var length = rows.Zip(rows.Skip(1), (row, next) => Fine.Length(next.DoubleMiddle - row.DoubleMiddle) / 2).Sum();
        return 10 * length >= ColumnLengthTenths * (long)width;
    }

    /// <summary>Stitches that are no areas, as long as the thread goes on.</summary>
    private void AddLines(LimbCutter cutter, int thread)
    {
        var line = new List<Knot>();
        foreach (var span in reading.Spans.Where(span => ThreadOf(span.First) == thread && IsLine(span)))
        {
            for (var i = span.First; i <= span.Last; i++)
            {
                if (line.Count > 0 && (line[^1].Stitches.Last != i - 1 || stitches.Relations[i] != Relation.Thread || IsLongFloat(i)))
                    Flush(cutter, line);
                line.Add(new(points.At(i), points.At(i), new(i, i)));
            }
        }

        Flush(cutter, line);
    }

    private static bool IsArea(List<Knot> line)
    {
        var box = line.Select(knot => Box.Of(knot.One)).Aggregate((sum, point) => sum.Union(point));
        var length = line.Zip(line.Skip(1), (knot, next) => Fine.Length(next.One - knot.One)).Sum();
        return length > (long)LongestLine * Fine.PerTenth * (box.Width + box.Height);
    }

    private bool IsLongFloat(int i) =>
        stitches.Jumps[i] > 0 && Fine.Square(stitches.At(i) - stitches.At(i - 1)) > LongestFloat * LongestFloat;

    private static void Flush(LimbCutter cutter, List<Knot> line)
    {
        if (line.Count > 1 && !IsArea(line))
            cutter.AddLine([.. line]);
        line.Clear();
    }

    /// <summary>No area, or rows so few that they may be a letter drawn in a line; also ways that look hidden, and ties.</summary>
    private bool IsLine(Span span) =>
        span.Role != SpanRole.Underlay
        && (span.Class is not (StitchClass.Satin or StitchClass.Fill) || (span.Piece is { } piece && reading.Pieces[piece].Rows < FewRows));

    private int ThreadOf(int penetration) => _threadOfBlock[stitches.Block[penetration] - 1];

    // By their first and by their last penetration.
    private readonly IReadOnlyDictionary<int, Span> _ties = reading.Spans
        .Where(IsTie)
        .SelectMany(span => new[] { (At: span.First, Span: span), (At: span.Last, Span: span) })
        .DistinctBy(end => end.At)
        .ToDictionary(end => end.At, end => end.Span);

    /// <summary>A tie that begins on the last rows of a column may be read as a short line sewn to and fro.</summary>
    private static bool IsTie(Span span) =>
        span.Role == SpanRole.Tie || (span.Class == StitchClass.Retraced && span.Penetrations <= LongestTie);

    private readonly int[] _threadOfBlock = ThreadsOf(stitches, reading);

    private static int[] ThreadsOf(StitchSequence stitches, DesignReading reading)
    {
        var threads = new int[stitches.Blocks];
        foreach (var element in reading.Elements)
            threads[element.Block - 1] = element.Thread;
        return threads;
    }
}
