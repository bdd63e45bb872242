using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning.Colors;

/// <summary>
/// Looks for color blocks other than those of the tape: blocks of one thread put together or sharing their elements
/// otherwise, and one or two color changes more where they can pay. What it finds is good, not proven to be best.
/// </summary>
internal sealed class ColorSearch
{
    // House: beyond so many elements, or so many pairs of them looked at, it takes longer than it is worth.
    private const int MostElements = 300;
    private const int MostPairs = 20_000_000;

    private const int Tried = 3;
    private const int MostExchanges = 4;
    private const int MostExtra = 2;

    // Two points of order cost.
    internal const long WorthSaying = OrderCosts.Scale / 50;

    private readonly long[] _objective;

    private ColorSearch(long[] objective) => _objective = objective;

    /// <summary>The blocks of the tape first; then better ones with no more changes, if any; then those with one and two more.</summary>
    internal static IReadOnlyList<Coloring> Of(PlanningTable table, long[] objective)
    {
        var search = new ColorSearch(objective);
        var held = Coloring.Of(table, objective);
        return table.Count is 0 or > MostElements
            ? [held]
            : [held, .. search.Regrouped(held), .. search.WithMore(held)];
    }

    private IEnumerable<Coloring> Regrouped(Coloring held)
    {
        var best = held;
        for (var step = 0; step < MostExchanges && Better(best) is { } better; step++)
            best = better;
        return best == held ? [] : [best];
    }

    /// <summary>Null when neither fewer blocks nor other ones of the same threads are better.</summary>
    private Coloring? Better(Coloring from)
    {
        if (from.Best is not { } was)
            return null;
        return Best(OtherBlocks.Merged(from), from).FirstOrDefault(one => one.Wanted.Cost <= was.Cost && IsCheaper(one))
            ?? Best(OtherBlocks.Exchanged(from), from).FirstOrDefault(IsCheaper);

        bool IsCheaper(Coloring one) => one.Best is { } best && one.PriceOf(best) < from.PriceOf(was);
    }

    private IEnumerable<Coloring> WithMore(Coloring held)
    {
        var floor = CycleBound.Of(new(_objective, held.Table.Precedence, held.Table.Seed));
        var best = held;
        for (var extra = 1; extra <= MostExtra && best.Search.Points[^1].Cost - floor >= WorthSaying; extra++)
        {
            if (Best(OtherBlocks.Split(best), best).FirstOrDefault() is not { } better)
                yield break;
            yield return better;
            best = better;
        }
    }

    /// <summary>The most promising ways, searched in full; best first.</summary>
    private IEnumerable<Coloring> Best(IEnumerable<int[]> ways, Coloring from)
    {
        var guess = new ColorGuess(from, _objective);
        var most = Math.Max(Tried, MostPairs / (from.Table.Count * from.Table.Count));
        return ways.Take(most)
            .Select(blocks => (Blocks: blocks, Price: guess.PriceOf(blocks)))
            .Where(way => way.Price is not null)
            .OrderBy(way => way.Price)
            .Take(Tried)
            .Select(way => Coloring.Of(from.Table with { Blocks = way.Blocks }, _objective, from))
            .Where(way => !way.StopsForNothing)
            .OrderBy(way => way.PriceOf(way.Wanted));
    }
}
