using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces.Lines;

/// <summary>A part of a line whose stitches have a mark, or have it not.</summary>
internal readonly record struct Stretch(Interval Interval, bool IsMarked)
{
    // A stretch of line shorter than this does not change its part, tape units.
    private const int Shortest = 30;

    /// <summary>
    /// Marked and unmarked stretches in turn. A needle point between the two belongs to the unmarked one.
    /// </summary>
    /// <param name="stitches">The stitches.</param>
    /// <param name="line">The whole line.</param>
    /// <param name="isMarked">Of the stitch that ends with a penetration.</param>
    public static List<Stretch> Among(StitchSequence stitches, Interval line, Func<int, bool> isMarked)
    {
        var stretches = new List<Stretch>();
        var (first, marked, changed, length) = (line.First, false, line.First, 0L);
        for (var i = line.First + 1; i <= line.Last; i++)
        {
            var now = isMarked(i);
            if (i == line.First + 1)
                marked = now;
            if (now == marked)
            {
                (changed, length) = (i, 0);
                continue;
            }

            length += Fine.Length(stitches.At(i) - stitches.At(i - 1)) / Fine.PerTenth;
            if (length < Shortest)
                continue;
            var end = marked ? changed - 1 : changed;
            if (end >= first)
                stretches.Add(new(new(first, end), marked));
            (first, marked, changed, length) = (end + 1, now, i, 0);
        }

        stretches.Add(new(new(first, line.Last), marked));
        return stretches;
    }
}
