using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Drafting;

/// <summary>
/// A fill of level rows, bottom to top, each sewn back against the one below, with the needle points of neighboring
/// rows offset so that they make no line.
/// </summary>
/// <param name="Outline">Corners of a shape that every level line cuts at most twice.</param>
public sealed record Fill(IReadOnlyList<TapePoint> Outline)
{
    // Offsets of the needle points repeat after this many rows.
    private const int OffsetRows = 4;

    // No needle point nearer to the end of a row: stitches below 1 mm only cost thread breaks (common practice, no source).
    private const int EndRoom = Tenths.PerMillimeter;

    /// <summary>Distance of rows, tape units; 0.40 mm is common practice, no source.</summary>
    public int RowPitch { get; init; } = 4;

    /// <summary>Stitch length in a row, tape units; the stitches at its ends may be up to 1 mm longer.</summary>
    public int StitchLength { get; init; } = 38;

    /// <summary>Distance of the underlay's rows, tape units; 0: no underlay.</summary>
    public int UnderlayPitch { get; init; } = 24;

    /// <summary>Fills a box.</summary>
    public static Fill Of(Box box) => new(
        [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)]);

    /// <summary>Sews underlay, if any, top to bottom, and then the rows, bottom to top.</summary>
    internal void Sew(Draft draft)
    {
        if (UnderlayPitch > 0)
            SewRows(draft, [.. Levels(UnderlayPitch).Reverse()], inset: 8);
        SewRows(draft, [.. Levels(RowPitch)], inset: 0);
    }

    private void SewRows(Draft draft, IReadOnlyList<int> levels, int inset)
    {
        for (var row = 0; row < levels.Count; row++)
        {
            var (left, right) = RowAt(levels[row]);
            if (right - left < 2 * inset)
                continue;
            var points = Row(left + inset, right - inset, levels[row], row);
            draft.Stitches(row % 2 == 0 ? points : points.Reverse());
        }
    }

    private IEnumerable<int> Levels(int pitch)
    {
        var (bottom, top) = (Outline.Min(corner => corner.Y), Outline.Max(corner => corner.Y));
        return Enumerable.Range(0, ((top - bottom) / pitch) + 1).Select(k => bottom + (k * pitch));
    }

    /// <summary>Ends of a row and, between them, needle points on a grid that is offset from row to row.</summary>
    private IEnumerable<TapePoint> Row(int left, int right, int y, int row)
    {
        var offset = row % OffsetRows * StitchLength / OffsetRows;
        var beforeLeft = left - Modulo(left - offset, StitchLength);
        yield return new(left, y);
        for (var x = beforeLeft + StitchLength; x <= right - EndRoom; x += StitchLength)
        {
            if (x >= left + EndRoom)
                yield return new(x, y);
        }

        if (right > left)
            yield return new(right, y);
    }

    private (int Left, int Right) RowAt(int y)
    {
        var (left, right) = (int.MaxValue, int.MinValue);
        for (var i = 0; i < Outline.Count; i++)
        {
            var (from, to) = (Outline[i], Outline[(i + 1) % Outline.Count]);
            if (y < Math.Min(from.Y, to.Y) || y > Math.Max(from.Y, to.Y))
                continue;
            var (one, other) = Crossing(from, to, y);
            (left, right) = (Math.Min(left, Math.Min(one, other)), Math.Max(right, Math.Max(one, other)));
        }

        return (left, right);
    }

    /// <summary>Where an edge meets a level line: one place, or both its ends when it lies on the line.</summary>
    private static (int One, int Other) Crossing(TapePoint from, TapePoint to, int y)
    {
        if (from.Y == to.Y)
            return (from.X, to.X);
        var x = Way.Between(from, to, (double)(y - from.Y) / (to.Y - from.Y)).X;
        return (x, x);
    }

    private static int Modulo(int value, int divisor) => ((value % divisor) + divisor) % divisor;
}
