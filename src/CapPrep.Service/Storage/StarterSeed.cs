using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>Brings shops into being with the starter catalog, and keeps what the starter wrote up to date.</summary>
internal sealed class StarterSeed(AppDb db)
{
    /// <summary>Opens a shop inside the caller's transaction; a shop that exists gets what it lacks.</summary>
    public async Task Open(string shop, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync(
            $"INSERT INTO shops (shop, name) VALUES ({shop}, {shop}) ON CONFLICT (shop) DO NOTHING", cancel);
    }

    /// <summary>Gives every shop what a newer version of this program brings.</summary>
    public async Task OpenAll(CancellationToken cancel)
    {
        foreach (var shop in await db.Shops.Select(row => row.Shop).OrderBy(shop => shop).ToArrayAsync(cancel))
            await Open(shop, cancel);
    }
}
