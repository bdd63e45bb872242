using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Intake;

/// <summary>Finds the cap style that carries a supplier's article number.</summary>
internal sealed class SkuLookup(CatalogShelf shelf, ShopScope scope)
{
    private const int EveryStyle = 100_000;
    private const int MostSuggestions = 3;

    /// <summary>
    /// The style, or the ids of up to three whose numbers share the longest beginning with it; of all styles when none
    /// shares any. Letter case does not count.
    /// </summary>
    public async Task<(CatalogRow? Style, IReadOnlyList<string> Suggestions)> Find(string sku, CancellationToken cancel)
    {
        var rows = await shelf.List(scope.Required, CatalogKinds.CapStyles, null, EveryStyle, cancel);
        var styles = rows
            .OrderBy(row => row.Id, StringComparer.Ordinal)
            .Select(row => (Row: row, Shared: LongestShared(TradeReader.CapStyle(row.Body).Value!.Skus, sku)))
            .ToArray();
        var (found, _) = styles.FirstOrDefault(style => style.Shared == int.MaxValue);
        return found is null ? (null, Nearest([.. styles.Select(style => (style.Row.Id, style.Shared))])) : (found, []);
    }

    private static IReadOnlyList<string> Nearest((string Id, int Shared)[] styles)
    {
        var near = styles.Where(style => style.Shared > 0).OrderByDescending(style => style.Shared).Take(MostSuggestions).ToArray();
        return [.. (near.Length > 0 ? near : styles).Select(style => style.Id)];
    }

    /// <summary>Characters in common at the beginning; the greatest number when one is the whole.</summary>
    private static int LongestShared(IReadOnlyList<string> skus, string sku) => skus
        .Select(own => own.Equals(sku, StringComparison.OrdinalIgnoreCase) ? int.MaxValue : Shared(own, sku))
        .DefaultIfEmpty(0)
        .Max();

    private static int Shared(string one, string other)
    {
        var length = 0;
        while (length < Math.Min(one.Length, other.Length) && char.ToUpperInvariant(one[length]) == char.ToUpperInvariant(other[length]))
            length++;
        return length;
    }
}
