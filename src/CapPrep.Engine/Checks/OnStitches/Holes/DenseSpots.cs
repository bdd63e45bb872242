using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnStitches.Holes;

/// <summary>Windows that make one place, and how bad it is.</summary>
internal sealed record DenseSpot(Severity Level, IReadOnlyList<HoleWindow> Windows);

/// <summary>
/// Joins dense windows to places. A window alone proves little: it counts when enough windows side by side or corner to
/// corner, without overlap, pass the same limit.
/// </summary>
internal sealed class DenseSpots(IReadOnlyList<HoleWindow> windows, Limits limits, Func<Severity, int> needed)
{
    private readonly long[] _keys = [.. windows.Select(window => window.Key.Packed)];

    internal IEnumerable<DenseSpot> Find()
    {
        var levels = new Severity?[windows.Count];
        foreach (var level in Enum.GetValues<Severity>())
        {
            var passing = Where(i => limits.PassedBy(windows[i].HolesPerMm2)!.Level >= level);
            foreach (var group in Groups(passing, HoleWindow.Cells, HoleWindow.Cells).Where(group => group.Count >= needed(level)))
            {
                foreach (var i in group)
                    levels[i] = level;
            }
        }

        return Groups(Where(i => levels[i] is not null), 1, HoleWindow.Cells).Select(group => Spot(group, levels));
    }

    private bool[] Where(Func<int, bool> wanted) => [.. Enumerable.Range(0, windows.Count).Select(wanted)];

    private DenseSpot Spot(IReadOnlyList<int> group, Severity?[] levels) =>
        new(group.Max(i => levels[i])!.Value, [.. group.Select(i => windows[i])]);

    /// <summary>Groups of windows that reach each other over steps of so many cells, each way.</summary>
    private IEnumerable<IReadOnlyList<int>> Groups(bool[] open, int step, int reach)
    {
        for (var i = 0; i < open.Length; i++)
        {
            if (open[i])
                yield return Reached(open, i, step, reach);
        }
    }

    private List<int> Reached(bool[] open, int from, int step, int reach)
    {
        var group = new List<int> { from };
        open[from] = false;
        for (var next = 0; next < group.Count; next++)
        {
            foreach (var neighbor in Neighbors(group[next], step, reach).Where(neighbor => open[neighbor]))
            {
                open[neighbor] = false;
                group.Add(neighbor);
            }
        }

        return group;
    }

    private IEnumerable<int> Neighbors(int window, int step, int reach)
    {
        for (var rows = -reach; rows <= reach; rows += step)
        {
            for (var columns = -reach; columns <= reach; columns += step)
            {
                var found = _keys.AsSpan().BinarySearch(windows[window].Key.Beside(rows, columns).Packed);
                if (found >= 0)
                    yield return found;
            }
        }
    }
}
