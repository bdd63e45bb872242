using CapPrep.Service.Access;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>DELETE /v1/webhooks/{id}.</summary>
internal static class RemoveEndpoint
{
    public static async Task<IResult> Handle(
        string id, HttpContext context, AppDb db, EndpointJson json, AuditTrail audit)
    {
        var cancel = context.RequestAborted;
        if (await db.Endpoints.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } row)
            return EndpointRoutes.NoEndpoint(id);

        var caller = context.Caller();
        audit.Note(caller.Shop, caller.KeyId, "end", EndpointRoutes.Kind, id, beforeSha: DocumentStore.Sha(json.One(row)));
        db.Endpoints.Remove(row);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.SaveChangesAsync(cancel);
        await db.GiveUpOwed(id, cancel);
        await transaction.CommitAsync(cancel);
        return TypedResults.NoContent();
    }
}
