using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>What is sewn between a fill and its border although it belongs to neither, in the order that is judged.</summary>
internal sealed class SewnBetween
{
    private readonly int[] _masses;
    private readonly int[] _place;
    private readonly int[] _order;
    private readonly Precedence _layers;

    internal SewnBetween(Subject subject)
    {
        _order = [.. subject.SewnOrder];
        _place = new int[_order.Length];
        for (var at = 0; at < _order.Length; at++)
            _place[_order[at]] = at;
        _masses = [.. subject.Reading.Elements.Select(element => element.Cover.Area)];
        _layers = Precedence.Of(_order.Length, subject.Reading.MustFollow.Select(pair => (pair.Before, pair.After)));
    }

    /// <summary>By covered area, of the whole design, 0 to 1; of the part that is sewn last.</summary>
    internal double ShareOf(Border border)
    {
        int[] parts = [.. border.Parts.Select(part => part.Element).Distinct()];
        var total = _masses.Sum(mass => (long)mass);
        return total == 0 ? 0 : parts.Max(part => MassBetween(border.Fill.Element, part, parts)) / (double)total;
    }

    private long MassBetween(int fill, int part, int[] parts) => _place[part] <= _place[fill] + 1
        ? 0
        : _order[(_place[fill] + 1).._place[part]]
            .Where(element => !parts.Contains(element) && _layers.IsFree(element, fill) && _layers.IsFree(element, part))
            .Sum(element => (long)_masses[element]);
}
