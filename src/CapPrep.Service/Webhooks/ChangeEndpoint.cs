using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>PATCH /v1/webhooks/{id}. Switching on forgets earlier failures and makes due what is owed;
/// while off, what is owed waits.</summary>
internal static class ChangeEndpoint
{
    private const string Types = "application/merge-patch+json and application/json";

    public static async Task<IResult> Handle(
        string id, HttpContext context, AppDb db, AddressGuard guard, EndpointJson json, AuditTrail audit, TimeProvider clock)
    {
        var cancel = context.RequestAborted;
        if (await db.Endpoints.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } row)
            return EndpointRoutes.NoEndpoint(id);
        var (bytes, refusal) = await SmallBody.Read(context.Request, cancel, types: Types);
        if (refusal is not null)
            return refusal;
        var reading = EndpointReader.ReadPatch(bytes, row);
        if (!reading.Succeeded)
            return SmallBody.Refuse(reading.Violations);
        if (guard.Judge(reading.Value.Url) is { } fault)
            return new Refusal(Problems.AddressNotAllowed, fault);

        var before = DocumentStore.Sha(json.One(row));
        Change(row, reading.Value);
        var shown = json.One(row);
        var caller = context.Caller();
        audit.Note(caller.Shop, caller.KeyId, "change", EndpointRoutes.Kind, id, beforeSha: before, afterSha: DocumentStore.Sha(shown));
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        await db.SaveChangesAsync(cancel);
        if (reading.Value.State == SwitchWord.On)
            await HurryOwed(db, id, clock.GetUtcNow(), cancel);
        await transaction.CommitAsync(cancel);
        return new JsonAnswer(shown);
    }

    private static Task HurryOwed(AppDb db, string id, DateTimeOffset now, CancellationToken cancel)
    {
        DateTimeOffset? due = now;
        return db.Deliveries
            .Where(row => row.Target == id && row.State == DeliveryState.Owed && row.NextAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.NextAt, due), cancel);
    }

    private static void Change(EndpointRow row, EndpointBody body)
    {
        row.Url = body.Url.AbsoluteUri;
        row.Types = string.Join(',', body.Types);
        row.Note = body.Note;
        if (body.State is null)
            return;
        row.State = body.State == SwitchWord.On ? EndpointState.On : EndpointState.Off;
        row.PausedUntil = null;
        row.FailingSince = null;
        row.Warned = 0;
    }
}
