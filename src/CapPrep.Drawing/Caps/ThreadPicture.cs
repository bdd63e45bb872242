using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Drawing.Caps;

/// <summary>The design as thin lines of thread, block by block in the order received.</summary>
internal static class ThreadPicture
{
    /// <summary>Points that matter less than this are left out, 0.01 mm.</summary>
    private const int Tolerance = 10;

    /// <summary>A thread line at true size, 0.01 mm; 40 wt thread covers about 0.4 mm (common practice, no source).</summary>
    private const int ThreadWidth = 22;
    private const int ThinnestLine = 5;

    /// <summary>Difference of brightness below which a thread gets an outline against the cloth.</summary>
    private const int FaintBelow = 60;

    public static void Draw(SheetPad pad, CapView view, Preparation preparation, ThreadInks inks, Ink cloth)
    {
        var width = Math.Max(ThinnestLine, ThreadWidth / view.Reduction);
        foreach (var (block, lines) in Blocks(view, preparation))
        {
            var ink = inks.Of(block);
            if (Math.Abs(ink.Brightness - cloth.Brightness) < FaintBelow)
                pad.Add(new LinesMark(lines, new Stroke(width * 2, Ink.Gray(cloth.Brightness > 140 ? (byte)120 : (byte)150))));
            pad.Add(new LinesMark(lines, new Stroke(width, ink)));
        }
    }

    private static IEnumerable<(int Block, List<IReadOnlyList<SheetPoint>> Lines)> Blocks(CapView view, Preparation preparation)
    {
        var sequence = StitchSequence.Of(preparation.Tape, preparation.Setup.Machine.Tape.TrimCount);
        return Strands(sequence)
            .GroupBy(strand => sequence.Block[strand.First])
            .Select(block => (block.Key, block.Select(strand => Line(view, preparation, sequence, strand)).ToList()));
    }

    private static IEnumerable<(int First, int Last)> Strands(StitchSequence sequence)
    {
        var first = 0;
        for (var i = 1; i <= sequence.Count; i++)
        {
            if (i < sequence.Count && sequence.Relations[i] == Relation.Thread)
                continue;
            yield return (first, i - 1);
            first = i;
        }
    }

    private static IReadOnlyList<SheetPoint> Line(
        CapView view, Preparation preparation, StitchSequence sequence, (int First, int Last) strand)
    {
        var points = new List<SheetPoint>(strand.Last - strand.First + 1);
        for (var i = strand.First; i <= strand.Last; i++)
            points.Add(view.At(OnCap(preparation, sequence.At(i))));
        return Thinning.Reduce(points, Tolerance);
    }

    private static TapePoint OnCap(Preparation preparation, TapePoint point) =>
        preparation.Seating is { } seating ? seating.OnCap(point) : point;
}
