using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Revisions;

/// <summary>The needle points of one of two designs that are compared, the right way up, in units of its tape.</summary>
internal sealed class DesignPoints
{
    private readonly TapePoint[] _points;

    internal DesignPoints(StitchSequence stitches, DesignReading reading, bool isTurned)
    {
        (Stitches, Reading) = (stitches, reading);
        _points = [.. Enumerable.Range(0, stitches.Count).Select(i => isTurned ? stitches.At(i).Turned() : stitches.At(i))];
        Box = BoxOf(0, _points.Length - 1);
    }

    internal StitchSequence Stitches { get; }

    internal DesignReading Reading { get; }

    internal Box Box { get; }

    internal int Count => _points.Length;

    internal TapePoint At(int index) => _points[index];

    internal Box BoxOf(Element element) => BoxOf(element.First, element.Last);

    /// <summary>The same shape, each point within the tolerance, wherever it lies.</summary>
    /// <param name="others">Needle point of the other design at which it would begin.</param>
    internal bool HasShapeAt(Element own, DesignPoints other, int others)
    {
        if (others + own.Penetrations > other.Count)
            return false;
        var shift = other.At(others) - At(own.First);
        for (var i = 1; i < own.Penetrations; i++)
        {
            if ((other.At(others + i) - At(own.First + i) - shift).Reach > SegmentIndex.Tolerance)
                return false;
        }

        return true;
    }

    internal Box BoxOf(int first, int last)
    {
        var box = Box.Of(_points[first]);
        for (var i = first + 1; i <= last; i++)
            box = box.Union(_points[i]);
        return box;
    }
}
