using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>POST /v1/webhooks: a new receiver, owed every event of its types that is committed from now on.</summary>
internal static class AddEndpoint
{
    public static async Task<IResult> Handle(
        HttpContext context, AppDb db, AddressGuard guard, Secrets secrets, EndpointJson json, AuditTrail audit, TimeProvider clock)
    {
        var cancel = context.RequestAborted;
        var (bytes, refusal) = await SmallBody.Read(context.Request, cancel);
        if (refusal is not null)
            return refusal;
        var reading = EndpointReader.Read(bytes);
        if (!reading.Succeeded)
            return SmallBody.Refuse(reading.Violations);
        if (guard.Judge(reading.Value.Url) is { } fault)
            return new Refusal(Problems.AddressNotAllowed, fault);

        var caller = context.Caller();
        var secret = Signer.NewSecret();
        var row = New(reading.Value, caller.Shop, secrets.Seal([new EndpointSecret(secret, clock.GetUtcNow(), null)]), clock);
        var shown = json.One(row);
        db.Endpoints.Add(row);
        audit.Note(caller.Shop, caller.KeyId, "add", EndpointRoutes.Kind, row.Id, afterSha: DocumentStore.Sha(shown));
        await db.SaveChangesAsync(cancel);
        return new JsonAnswer(json.One(row, secret), StatusCodes.Status201Created) { Location = $"/v1/webhooks/{row.Id}", Once = true };
    }

    private static EndpointRow New(EndpointBody body, string shop, byte[] secrets, TimeProvider clock) => new()
    {
        Shop = shop,
        Id = Ids.New(Ids.Webhook, clock),
        Url = body.Url.AbsoluteUri,
        Types = string.Join(',', body.Types),
        Note = body.Note,
        State = EndpointState.On,
        Secrets = secrets,
        Created = clock.GetUtcNow(),
    };
}
