using CapPrep.Engine.Sequence.Groups;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Cost;

/// <summary>The elements of a design as the order rules see them, in received order.</summary>
internal sealed record OrderSubject
{
    internal required IReadOnlyList<MassMap> Masses { get; init; }

    /// <summary>Number of the thread of each element.</summary>
    internal required IReadOnlyList<int> Threads { get; init; }

    internal required Precedence Precedence { get; init; }

    /// <summary>The same without what only holds the letters of a line together.</summary>
    internal required Precedence Layers { get; init; }

    internal TextLinePlaces Lines { get; init; } = TextLinePlaces.None;

    /// <summary>Elements that stay first and that no order rule counts; sorted.</summary>
    internal IReadOnlyList<int> Pinned { get; init; } = [];

    /// <summary>Which elements are parts of one fill.</summary>
    internal required SewnAreas Areas { get; init; }

    internal bool IsPinned(int element) => Pinned.Contains(element);
}
