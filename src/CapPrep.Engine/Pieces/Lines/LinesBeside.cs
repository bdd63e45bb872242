using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces.Lines;

/// <summary>
/// Says on how many sides of each stitch of some lines another one of these lines, or the same once more, runs past in
/// about the same direction, at most 0.7 mm away.
/// </summary>
internal sealed class LinesBeside
{
    // Tape units: how far off another line is looked for, and the distance of two places on a stitch to look from.
    private const int Nearest = 2;
    private const int Farthest = 7;
    private const int Step = 5;

    private readonly StitchSequence _stitches;
    private readonly CellMap _map;
    private readonly byte[] _sides;

    private LinesBeside(StitchSequence stitches, CellMap map)
    {
        (_stitches, _map) = (stitches, map);
        _sides = new byte[stitches.Count];
    }

    /// <summary>Looks along lines.</summary>
    public static LinesBeside Of(StitchSequence stitches, IReadOnlyList<Interval> lines)
    {
        var box = lines.Select(stitches.BoxOf).Aggregate((all, one) => all.Union(one));
        var beside = new LinesBeside(stitches, new(stitches.Grid, box));
        int[] ends = [.. lines.SelectMany(line => Enumerable.Range(line.First + 1, line.Count - 1))];
        foreach (var i in ends)
            beside._map.Paint(CellLine.Between(stitches.Grid, stitches.At(i - 1), stitches.At(i)), i);
        foreach (var i in ends)
            beside._sides[i] = beside.SidesAt(i);
        return beside;
    }

    /// <summary>0, 1 or 2, of the stitch that ends with a penetration.</summary>
    public int Sides(int index) => _sides[index];

    /// <summary>Half of the places on a stitch are enough for a side.</summary>
    private byte SidesAt(int index)
    {
        var way = _stitches.At(index) - _stitches.At(index - 1);
        var length = Fine.Length(way);
        if (length == 0)
            return 0;
        var places = 1 + (int)(length / Fine.PerTenth / Step);
        var (left, right) = (0, 0);
        for (var k = 0; k < places; k++)
        {
            var share = (2 * k) + 1;
            var at = _stitches.At(index - 1) + new TapePoint(way.X * share / (2 * places), way.Y * share / (2 * places));
            left += IsNear(at, new(-way.Y, way.X), length, index) ? 1 : 0;
            right += IsNear(at, new(way.Y, -way.X), length, index) ? 1 : 0;
        }

        return (byte)((2 * left >= places ? 1 : 0) + (2 * right >= places ? 1 : 0));
    }

    private bool IsNear(TapePoint at, TapePoint aside, long length, int index)
    {
        for (var far = Nearest; far <= Farthest; far++)
        {
            var other = _map.At(_stitches.Grid, at + new TapePoint(
                (int)(aside.X * far * Fine.PerTenth / length), (int)(aside.Y * far * Fine.PerTenth / length)));
            if (other > 0 && Math.Abs(other - index) > 1 && IsAlong(index, other))
                return true;
        }

        return false;
    }

    /// <summary>Within 30 degrees, in either sense.</summary>
    private bool IsAlong(int one, int other)
    {
        var (a, b) = (_stitches.At(one) - _stitches.At(one - 1), _stitches.At(other) - _stitches.At(other - 1));
        var dot = Fine.Dot(a, b);
        return 4 * dot * dot >= 3 * Fine.Square(a) * Fine.Square(b);
    }
}
