using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Access;

/// <summary>Makes and ends keys; the first key for a shop brings the shop into being.</summary>
internal sealed class KeyDesk(AppDb db, StarterSeed starter, TimeProvider clock)
{
    /// <summary>Stores a key that somebody holds already; gives its row.</summary>
    public async Task<KeyRow> Add(
        string key, string shop, string name, IEnumerable<string> scopes, DateTimeOffset? expires, CancellationToken cancel)
    {
        var row = new KeyRow
        {
            Shop = shop,
            Id = Ids.New(Ids.Key, clock),
            Name = name,
            Hash = KeyForm.Hash(key),
            Start = KeyForm.Start(key),
            Scopes = string.Join(',', scopes.Distinct().Order(StringComparer.Ordinal)),
            Created = clock.GetUtcNow(),
            Expires = expires,
        };
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await starter.Open(shop, cancel);
        db.Keys.Add(row);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return row;
    }

    /// <summary>Ends a key of the visible shops; false when there is none of that id or it ended before.</summary>
    public async Task<bool> End(string id, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        return await db.Keys.Where(key => key.Id == id && key.Ended == null)
            .ExecuteUpdateAsync(set => set.SetProperty(key => key.Ended, now), cancel) == 1;
    }

    public Task<KeyRow[]> List(CancellationToken cancel) =>
        db.Keys.AsNoTracking().Where(key => key.Ended == null).OrderBy(key => key.Id).ToArrayAsync(cancel);
}
