using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Finds the pairs of elements whose order may not change.</summary>
internal sealed class Layering
{
    // Of a cell, in tape units, rounded up.
    private const int CellWidth = 3;

    private readonly IReadOnlyList<Layer> _layers;
    private readonly List<MustFollow> _pairs = [];

    private Layering(IReadOnlyList<Layer> layers) => _layers = layers;

    /// <summary>The pairs, sorted; null when more boxes meet than the bounds allow.</summary>
    public static IReadOnlyList<MustFollow>? Pairs(IReadOnlyList<Layer> layers)
    {
        var layering = new Layering(layers);
        return layering.Compare() ? layering._pairs : null;
    }

    private bool Compare()
    {
        var tests = 0L;
        for (var before = 0; before < _layers.Count; before++)
        {
            for (var after = before + 1; after < _layers.Count; after++)
            {
                if (!WithCells(_layers[before].Box).Meets(_layers[after].Box))
                    continue;
                tests += 1 + _layers[before].Ways.Count + _layers[after].Ways.Count;
                if (tests > ReadingBounds.PairTests)
                    return false;
                if (Reason(_layers[before], _layers[after]) is { } found)
                    _pairs.Add(new(before, after, found.Reason, (double)found.Cells / Cover.CellsPerSquareMillimeter));
            }
        }

        return true;
    }

    /// <summary>Boxes that do not meet may still share the cells at their edges.</summary>
    private static Box WithCells(Box box) => new(box.Left - CellWidth, box.Bottom - CellWidth, box.Right + CellWidth, box.Top + CellWidth);

    private static (MustFollowReason Reason, int Cells)? Reason(Layer before, Layer after)
    {
        var sameThread = before.Thread == after.Thread;
        var shared = before.Part.Cover.Shared(after.Part.Cover);
        if (Layers.Count(sameThread, shared, Math.Min(before.Part.Cover.Area, after.Part.Cover.Area))
            && !(sameThread && Layers.MayChangePlaces(before.Part, after.Part)))
            return (MustFollowReason.Overlap, shared);
        return Hidden(before, after) ?? (sameThread ? null : Crossed(before, after));
    }

    /// <summary>The later one hides a way of the earlier one.</summary>
    private static (MustFollowReason Reason, int Cells)? Hidden(Layer before, Layer after) =>
        before.Ways
            .Where(way => way.IsLead)
            .Select(way => (way.Reason, Cells: way.Cover.Shared(after.Part.Cover), way.Cover.Area))
            .Where(way => Layers.Hides(way.Cells, way.Area))
            .OrderBy(way => way.Reason).ThenByDescending(way => way.Cells)
            .Select(way => ((MustFollowReason, int)?)(way.Reason, way.Cells))
            .FirstOrDefault();

    /// <summary>A loose thread of the later one lies over the earlier one, which has another thread.</summary>
    private static (MustFollowReason Reason, int Cells)? Crossed(Layer before, Layer after) =>
        after.Ways
            .Where(way => way.IsLoose)
            .Select(way => way.Cover.Shared(before.Part.Cover))
            .Where(cells => Layers.Count(sameThread: false, cells, 0))
            .OrderDescending()
            .Select(cells => ((MustFollowReason, int)?)(MustFollowReason.Travel, cells))
            .FirstOrDefault();
}
