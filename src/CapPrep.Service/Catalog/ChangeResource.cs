using CapPrep.Engine.Reading;
using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Catalog;

/// <summary>Creates, changes and retires resources; each change is a new version and a row of the audit.</summary>
internal sealed class ChangeResource(AppDb db, CatalogShelf shelf, ResourceCheck check, AuditTrail audit, ShopScope scope)
{
    /// <summary>Longest body, in bytes.</summary>
    public const int MostBytes = 262_144;

    public async Task<IResult> Put(ResourceKind kind, string id, HttpContext context, CancellationToken cancel)
    {
        if (kind.IsBuiltIn(id))
            return BuiltIn(id);
        var (precondition, malformed) = Precondition.Read(context.Request, mayCreate: true);
        if (precondition is null)
            return malformed!;
        var body = await RequestBody.ReadJson(context.Request, MostBytes, cancel);
        if (body.Refusal is not null)
            return body.Refusal;

        var latest = await shelf.Latest(scope.Required, kind.Path, id, cancel);
        if (Conflict(kind, id, precondition, latest) is { } conflict)
            return conflict;
        var given = GivenBody.Of(WithoutMark(body.Bytes));
        var faults = await check.Faults(kind, id, given, cancel);
        if (faults.Count > 0)
            return Faulty(kind, faults);
        return await Store(kind, id, latest, given, context.Caller(), retired: false, cancel) is { } row
            ? new ResourceAnswer(kind, row) { Location = latest is null ? context.Request.Path.Value : null }
            : Overtaken(kind, id, precondition);
    }

    public async Task<IResult> Retire(ResourceKind kind, string id, HttpContext context, CancellationToken cancel)
    {
        if (kind.IsBuiltIn(id))
            return BuiltIn(id);
        var (precondition, malformed) = Precondition.Read(context.Request, mayCreate: false);
        if (precondition is null)
            return malformed!;
        var latest = await shelf.Latest(scope.Required, kind.Path, id, cancel);
        if (latest is null)
            return GetResources.Missing(kind, id);
        if (!precondition.Admits(latest.Version))
            return Overtaken(kind, id, precondition);
        if (!latest.Retired && await Store(kind, id, latest, latest.Body, context.Caller(), retired: true, cancel) is null)
            return Overtaken(kind, id, precondition);
        return TypedResults.NoContent();
    }

    /// <summary>Adds a version; null: somebody else added it first.</summary>
    private async Task<CatalogRow?> Store(
        ResourceKind kind, string id, CatalogRow? latest, byte[] body, Caller caller, bool retired, CancellationToken cancel)
    {
        var shop = scope.Required;
        var row = shelf.Add(shop, kind.Path, id, (latest?.Version ?? 0) + 1, body, caller.KeyName, retired);
        audit.Note(shop, caller.KeyId, retired ? "retire" : "put", kind.Path, id, row.Version, latest?.Sha256, row.Sha256);
        try
        {
            await db.SaveChangesAsync(cancel);
            return row;
        }
        catch (DbUpdateException fault) when (Race.IsLost(fault))
        {
            return null;
        }
    }

    private static Refusal? Conflict(ResourceKind kind, string id, Precondition precondition, CatalogRow? latest)
    {
        if (precondition.Creates)
            return latest is null ? null : Overtaken(kind, id, precondition);
        if (latest is null)
            return new Refusal(Problems.VersionMismatch, $"There is no {kind.Noun} '{id}' yet; If-None-Match: * creates it.");
        return precondition.Admits(latest.Version) ? null : Overtaken(kind, id, precondition);
    }

    private static Refusal Overtaken(ResourceKind kind, string id, Precondition precondition) => precondition.Creates
        ? new Refusal(Problems.IdExists, $"There is a {kind.Noun} '{id}' already, or there was one.")
        : new Refusal(Problems.VersionMismatch, $"The newest version of the {kind.Noun} '{id}' is none of those in If-Match.");

    private static Refusal Faulty(ResourceKind kind, IReadOnlyList<Violation> faults) =>
        faults.Any(fault => fault.ByteOffset is not null)
            ? new Refusal(Problems.RequestMalformed, Refusal.Counted(faults, "body")) { Violations = faults }
            : new Refusal(kind.Invalid, Refusal.Counted(faults, kind.Noun)) { Violations = faults };

    private static Refusal BuiltIn(string id) => new(Problems.BuiltIn, $"The rule book '{id}' comes with this program.");

    // The reader passes over a byte order mark; what is stored begins with the JSON.
    private static byte[] WithoutMark(byte[] body) => body is [0xEF, 0xBB, 0xBF, .. var rest] ? rest : body;
}
