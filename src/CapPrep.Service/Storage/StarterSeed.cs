using CapPrep.Engine.Trade;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>Brings shops into being with the starter catalog, and keeps what the starter wrote up to date.</summary>
internal sealed class StarterSeed(AppDb db, TimeProvider clock)
{
    /// <summary>
    /// Opens a shop inside the caller's transaction. A shop that exists gets what it lacks, and a new version of what
    /// a person has not changed since the starter wrote it.
    /// </summary>
    public async Task Open(string shop, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync(
            $"INSERT INTO shops (shop, name) VALUES ({shop}, {shop}) ON CONFLICT (shop) DO NOTHING", cancel);
        var newest = await Newest(shop, cancel);
        foreach (var item in Items(shop))
        {
            if (NextVersion(item, newest.GetValueOrDefault((item.Kind, item.Id))) is { } version)
                await Insert(shop, item, version, cancel);
        }
    }

    /// <summary>Gives every shop what a newer version of this program brings.</summary>
    public async Task OpenAll(CancellationToken cancel)
    {
        foreach (var shop in await db.Shops.Select(row => row.Shop).OrderBy(shop => shop).ToArrayAsync(cancel))
            await Open(shop, cancel);
    }

    private async Task<Dictionary<(string Kind, string Id), Head>> Newest(string shop, CancellationToken cancel)
    {
        var heads = await db.Catalog.IgnoreQueryFilters()
            .Where(row => row.Shop == shop)
            .OrderBy(row => row.Version)
            .Select(row => new Head(row.Kind, row.Id, row.Version, row.Sha256, row.By, row.Retired))
            .ToArrayAsync(cancel);
        return heads.GroupBy(head => (head.Kind, head.Id)).ToDictionary(group => group.Key, group => group.Last());
    }

    private static IEnumerable<Item> Items(string shop)
    {
        var starter = Embedded.StarterCatalog;
        return
        [
            .. Of(CatalogKinds.CapStyles, starter.CapStyles),
            .. Of(CatalogKinds.CapFrames, starter.CapFrames),
            .. Of(CatalogKinds.Machines, starter.Machines),
            .. Of(CatalogKinds.FramingStations, starter.FramingStations),
            new Item(CatalogKinds.RuleBooks, HouseBook.BookId, Embedded.HouseBookBytes.ToArray(), Embedded.HouseBook.Version),
            new Item(CatalogKinds.Shop, shop, starter.Shop.Bytes.ToArray(), null),
        ];
    }

    private static IEnumerable<Item> Of<T>(string kind, IEnumerable<StarterResource<T>> resources)
        where T : class =>
        resources.Select(resource => new Item(kind, resource.Id, resource.Bytes.ToArray(), null));

    /// <summary>The version to add; null: nothing to add. The built-in book counts its versions itself.</summary>
    private static int? NextVersion(Item item, Head? newest)
    {
        if (item.OwnVersion is { } own)
            return newest is null || newest.Version < own ? own : null;
        if (newest is null)
            return 1;
        var changed = newest.By == CatalogShelf.Starter && !newest.Retired && newest.Sha256 != item.Sha256;
        return changed ? newest.Version + 1 : null;
    }

    // Two processes may start at once and bring the same version: the first one's stays.
    private Task<int> Insert(string shop, Item item, int version, CancellationToken cancel)
    {
        var at = clock.GetUtcNow().ToUnixTimeMilliseconds();
        return db.Database.ExecuteSqlAsync(
            $"""
             INSERT INTO catalog (shop, kind, id, version, body, sha256, at, "by", retired)
             VALUES ({shop}, {item.Kind}, {item.Id}, {version}, {item.Bytes}, {item.Sha256}, {at}, {CatalogShelf.Starter}, {false})
             ON CONFLICT (shop, kind, id, version) DO NOTHING
             """, cancel);
    }

    private sealed record Head(string Kind, string Id, int Version, string Sha256, string By, bool Retired);

    private sealed record Item(string Kind, string Id, byte[] Bytes, int? OwnVersion)
    {
        public string Sha256 { get; } = DocumentStore.Sha(Bytes);
    }
}
