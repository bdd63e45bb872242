using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Groups;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>What is worked out once for a request: pairs, costs and neighbors of its elements.</summary>
internal sealed record PlanningTable
{
    /// <summary>House: a trim costs one hundredth of the worst that order can do.</summary>
    internal const long TrimPrice = OrderCosts.Scale / 100;

    private PlanningTable(SewOrderRequest request)
    {
        Request = request;
        int[] pinned = [.. TackDown.Find(request.Reading, request.Stitches).Union(request.KeptInPlace).Order()];
        var areas = SewnAreas.Of(Elements);
        var lines = request.Lines ?? TextLinePlaces.None with { TaglineIsOpen = true };
        if (lines.TaglineIsOpen)
            lines = lines with { Tagline = WithoutLetters(TaglineFinder.Find(Elements, request.Placement, areas), lines) };
        var layers = Precedence.Of(Count, [.. Pairs(pinned)]);
        Precedence = lines.Held.Count == 0 ? layers : Precedence.Of(Count, [.. Pairs(pinned), .. lines.Held]);
        Subject = new()
        {
            Masses = [.. Elements.Select(element => MassMap.Of(element, request.Placement))],
            Threads = [.. Elements.Select(element => element.Thread)],
            Precedence = Precedence,
            Layers = layers,
            Lines = lines with { Tagline = [.. lines.Tagline.Except(pinned)] },
            Pinned = pinned,
            Areas = areas,
        };
        Costs = OrderCosts.Of(Subject);
        Behind = Neighbors.Of(request, Precedence);
        int[] sewn = [.. Elements.Select(element => element.Block).Distinct()];
        Blocks = [.. Elements.Select(element => Array.IndexOf(sewn, element.Block))];
        Seed = SeedOf(request);
    }

    internal SewOrderRequest Request { get; }

    internal Precedence Precedence { get; }

    internal OrderSubject Subject { get; }

    internal OrderCosts Costs { get; }

    internal Adjacency[] Behind { get; }

    internal ulong Seed { get; }

    /// <summary>Color block in which each element is sewn, from 0; those of the tape unless others are tried.</summary>
    internal IReadOnlyList<int> Blocks { get; init; }

    internal IReadOnlyList<Element> Elements => Request.Reading.Elements;

    internal int Count => Elements.Count;

    internal int[] Received => [.. Enumerable.Range(0, Count)];

    internal static PlanningTable Of(SewOrderRequest request) => new(request);

    /// <summary>What the search minimizes, with every color block sewn once.</summary>
    internal OrderProblem Problem(long[] costs) => new(
        new(costs, Precedence, Seed),
        Blocks,
        Behind,
        TrimPrice);

    /// <summary>A group that takes in parts of a row of letters is no line of its own.</summary>
    private static IReadOnlyList<int> WithoutLetters(IReadOnlyList<int> group, TextLinePlaces lines) =>
        lines.Lines.Any(line => line.Any(place => group.Contains(place.Element))) ? [] : group;

    /// <summary>Layers, tack-down and deliberate stops.</summary>
    private IEnumerable<(int Before, int After)> Pairs(IReadOnlyList<int> pinned) =>
        Request.Reading.MustFollow.Select(pair => (pair.Before, pair.After))
            .Concat(pinned.SelectMany(held => InPlace(held)))
            .Concat(Request.DeliberateStops.SelectMany(AroundStop));

    private IEnumerable<(int Before, int After)> InPlace(int held) => Enumerable.Range(0, Count)
        .Where(item => item != held)
        .Select(item => item < held ? (item, held) : (held, item));

    /// <summary>
    /// Nothing moves across the stop: everything before it comes first, the blocks on both sides stay beside it and
    /// keep their inner order.
    /// </summary>
    private IEnumerable<(int Before, int After)> AroundStop(int block)
    {
        for (var before = 0; before < Count; before++)
        {
            for (var after = before + 1; after < Count; after++)
            {
                var (first, second) = (Elements[before].Block, Elements[after].Block);
                if ((first <= block && second > block) || second == block || first == block + 1)
                    yield return (before, after);
            }
        }
    }

    /// <summary>The element's block lies before or behind a stop for a person's hands.</summary>
    internal bool IsBesideStop(int element) =>
        Request.DeliberateStops.Any(stop => Elements[element].Block == stop || Elements[element].Block == stop + 1);

    private static ulong SeedOf(SewOrderRequest request)
    {
        var seed = Fnv1a.Basis;
        foreach (var element in request.Reading.Elements)
        {
            seed = Fnv1a.Of(seed, (long)element.First);
            seed = Fnv1a.Of(seed, (long)element.Last);
            seed = Fnv1a.Of(seed, (long)element.Box.Left);
            seed = Fnv1a.Of(seed, (long)element.Box.Bottom);
        }

        return seed;
    }
}
