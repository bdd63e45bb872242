using CapPrep.Engine.Checks;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>The kinds of the catalog, as they stand in addresses.</summary>
internal static class CatalogKinds
{
    public const string CapStyles = "cap-styles";
    public const string CapFrames = "cap-frames";
    public const string Machines = "machines";
    public const string FramingStations = "framing-stations";
    public const string RuleBooks = "rule-books";

    /// <summary>The shop's own decisions; the id is the shop's.</summary>
    public const string Shop = "shop";
}

/// <summary>
/// The versions of everything a job depends on. A change adds a version and nothing is ever changed or taken away, so
/// a job's pinned versions can always be read again.
/// </summary>
internal sealed class CatalogShelf(AppDb db, TimeProvider clock)
{
    /// <summary>Name that versions of the starter catalog are written under.</summary>
    public const string Starter = "starter";

    /// <summary>The newest version, retired or not; null: there never was one.</summary>
    public Task<CatalogRow?> Latest(string shop, string kind, string id, CancellationToken cancel) =>
        Rows(shop, kind).Where(row => row.Id == id).OrderByDescending(row => row.Version).FirstOrDefaultAsync(cancel);

    public Task<CatalogRow?> At(string shop, string kind, string id, int version, CancellationToken cancel) =>
        Rows(shop, kind).Where(row => row.Id == id && row.Version == version).FirstOrDefaultAsync(cancel);

    /// <summary>The newest version of each resource in use, by id.</summary>
    /// <param name="after">Begins behind this id; null: with the first.</param>
    public Task<CatalogRow[]> List(string shop, string kind, string? after, int limit, CancellationToken cancel) =>
        Newest(shop, kind)
            .Where(row => !row.Retired && (after == null || row.Id.CompareTo(after) > 0))
            .OrderBy(row => row.Id)
            .Take(limit)
            .ToArrayAsync(cancel);

    /// <summary>The ids of all resources in use, sorted.</summary>
    public async Task<string[]> Ids(string shop, string kind, CancellationToken cancel) =>
        [.. (await Newest(shop, kind).Where(row => !row.Retired).Select(row => row.Id).ToArrayAsync(cancel)).Order(StringComparer.Ordinal)];

    /// <summary>Ids and newest versions of the resources in use, by id.</summary>
    public Task<VersionedId[]> Current(string shop, string kind, int limit, CancellationToken cancel) =>
        Newest(shop, kind)
            .Where(row => !row.Retired)
            .OrderBy(row => row.Id)
            .Take(limit)
            .Select(row => new VersionedId(row.Id, row.Version))
            .ToArrayAsync(cancel);

    /// <summary>Versions of one resource, newest first.</summary>
    /// <param name="before">Begins behind this version; null: with the newest.</param>
    public Task<CatalogRow[]> Versions(string shop, string kind, string id, int? before, int limit, CancellationToken cancel) =>
        Rows(shop, kind)
            .Where(row => row.Id == id && (before == null || row.Version < before))
            .OrderByDescending(row => row.Version)
            .Take(limit)
            .ToArrayAsync(cancel);

    /// <summary>
    /// Puts a version up for the next save. Two that add the same version at once: the second save throws a
    /// <see cref="DbUpdateException"/> that <see cref="Race.IsLost"/> recognizes.
    /// </summary>
    public CatalogRow Add(string shop, string kind, string id, int version, byte[] body, string by, bool retired = false)
    {
        var row = new CatalogRow
        {
            Shop = shop,
            Kind = kind,
            Id = id,
            Version = version,
            Body = body,
            Sha256 = DocumentStore.Sha(body),
            At = clock.GetUtcNow(),
            By = by,
            Retired = retired,
        };
        db.Catalog.Add(row);
        return row;
    }

    private IQueryable<CatalogRow> Rows(string shop, string kind) =>
        db.Catalog.AsNoTracking().Where(row => row.Shop == shop && row.Kind == kind);

    private IQueryable<CatalogRow> Newest(string shop, string kind) => Rows(shop, kind).Where(row =>
        !db.Catalog.Any(newer => newer.Shop == row.Shop && newer.Kind == row.Kind && newer.Id == row.Id && newer.Version > row.Version));
}
