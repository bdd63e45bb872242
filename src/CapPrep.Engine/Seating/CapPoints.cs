using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Seating;

/// <summary>The needle points of a tape as they lie on the cap, in tape units and in the tape's time order.</summary>
internal sealed class CapPoints
{
    private readonly int[] _x;
    private readonly int[] _y;

    private CapPoints(int[] x, int[] y) => (_x, _y) = (x, y);

    internal int Count => _x.Length;

    internal ReadOnlySpan<int> X => _x;

    internal ReadOnlySpan<int> Y => _y;

    internal TapePoint At(int index) => new(_x[index], _y[index]);

    /// <summary>Smallest box around the points <paramref name="first"/> to <paramref name="last"/>, both included.</summary>
    internal Box BoxOf(int first, int last)
    {
        var box = Box.Of(At(first));
        for (var i = first + 1; i <= last; i++)
            box = box.Union(At(i));
        return box;
    }

    /// <summary>Turned half round about the foot of the center.</summary>
    internal CapPoints UpsideDown() => new([.. _x.Select(x => -x)], [.. _y.Select(y => -y)]);

    internal static CapPoints Of(StitchSequence stitches, SeatedDesign seated)
    {
        var x = new int[stitches.Count];
        var y = new int[stitches.Count];
        for (var i = 0; i < stitches.Count; i++)
            (x[i], y[i]) = seated.OnCap(stitches.At(i));
        return new CapPoints(x, y);
    }
}
