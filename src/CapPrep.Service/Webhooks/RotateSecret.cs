using CapPrep.Engine.Reading;
using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>POST /v1/webhooks/{id}/secret: a new secret beside the old one, so that a receiver can change over in peace.</summary>
internal static class RotateSecret
{
    private const int StandardOverlapHours = 24;
    private const int LongestOverlapHours = 168;

    public static async Task<IResult> Handle(
        string id, HttpContext context, AppDb db, Secrets secrets, EndpointJson json, AuditTrail audit, TimeProvider clock)
    {
        var cancel = context.RequestAborted;
        if (await db.Endpoints.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } row)
            return EndpointRoutes.NoEndpoint(id);
        var (bytes, refusal) = await SmallBody.Read(context.Request, cancel, optional: true);
        if (refusal is not null)
            return refusal;
        var reading = Read(bytes);
        if (!reading.Succeeded)
            return SmallBody.Refuse(reading.Violations);

        var before = DocumentStore.Sha(json.One(row));
        var secret = Signer.NewSecret();
        row.Secrets = secrets.Seal(secrets.Unseal(row.Secrets).Rotated(secret, clock.GetUtcNow(), reading.Value.Length));
        var caller = context.Caller();
        audit.Note(caller.Shop, caller.KeyId, "change", EndpointRoutes.Kind, id, beforeSha: before, afterSha: DocumentStore.Sha(json.One(row)));
        await db.SaveChangesAsync(cancel);
        return new JsonAnswer(json.One(row, secret)) { Once = true };
    }

    private static ReadResult<Overlap> Read(byte[] body) => body.Length == 0
        ? ReadResult<Overlap>.Of(new Overlap(TimeSpan.FromHours(StandardOverlapHours)))
        : JsonBody.Read(body, new Faults(SmallBody.Part, "A change of secrets"), reader =>
            new Overlap(TimeSpan.FromHours(reader.Integer("overlapHours", 0, LongestOverlapHours) ?? StandardOverlapHours)));

    private sealed record Overlap(TimeSpan Length);
}
