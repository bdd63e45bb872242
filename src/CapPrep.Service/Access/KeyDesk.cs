using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Access;

/// <summary>Makes and ends keys; the first key for a shop brings the shop into being.</summary>
internal sealed class KeyDesk(AppDb db, StarterSeed starter, AuditTrail audit, TimeProvider clock)
{
    private const string Kind = "key";

    /// <summary>As below, made by the service itself or by a person at its command line.</summary>
    public Task<KeyRow> Add(
        string key, string shop, string name, IEnumerable<string> scopes, DateTimeOffset? expires, CancellationToken cancel) =>
        Add(key, shop, name, scopes, expires, AuditTrail.Service, cancel);

    /// <summary>Stores a key that somebody holds already; gives its row.</summary>
    /// <param name="by">Id of the key that asked for it.</param>
    public async Task<KeyRow> Add(
        string key, string shop, string name, IEnumerable<string> scopes, DateTimeOffset? expires, string by, CancellationToken cancel)
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
        audit.Note(shop, by, "add", Kind, row.Id);
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return row;
    }

    /// <summary>Ends a key of the visible shops; false when there is none of that id or it ended before.</summary>
    public Task<bool> End(string id, CancellationToken cancel) => End(id, AuditTrail.Service, cancel);

    /// <summary>As above.</summary>
    /// <param name="by">Id of the key that asked for it.</param>
    public async Task<bool> End(string id, string by, CancellationToken cancel)
    {
        if (await db.Keys.SingleOrDefaultAsync(key => key.Id == id && key.Ended == null, cancel) is not { } row)
            return false;
        row.Ended = clock.GetUtcNow();
        audit.Note(row.Shop, by, "end", Kind, id);
        await db.SaveChangesAsync(cancel);
        return true;
    }

    public Task<KeyRow[]> List(CancellationToken cancel) =>
        db.Keys.AsNoTracking().Where(key => key.Ended == null).OrderBy(key => key.Id).ToArrayAsync(cancel);
}
