using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Access;

/// <summary>
/// The addresses under /v1/keys. <c>manage</c> sees and changes the keys of its own shop, <c>operate</c> those of
/// every shop; only <c>operate</c> hands on <c>operate</c>.
/// </summary>
internal static class KeyRoutes
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var group = routes.MapGroup("/v1/keys").WithTags("Keys");
        group.MapGet("", List).Admits(Scopes.Manage, Scopes.Operate)
            .WithName("listKeys").WithSummary("Lists the keys that have not been ended.");
        group.MapPost("", Add).Admits(Scopes.Manage, Scopes.Operate)
            .WithName("addKey").WithSummary("Makes a key; answers once with it. The first key for a shop opens the shop.");
        group.MapDelete("/{id}", End).Admits(Scopes.Manage, Scopes.Operate)
            .WithName("endKey").WithSummary("Ends a key at once.");
    }

    private static async Task<IResult> List(HttpContext context, ShopScope scope, KeyDesk desk, CancellationToken cancel)
    {
        Widen(context, scope);
        return new JsonAnswer(KeyJson.List(await desk.List(cancel)));
    }

    private static async Task<IResult> Add(HttpContext context, KeyDesk desk, TimeProvider clock)
    {
        var cancel = context.RequestAborted;
        var (bytes, refusal) = await SmallBody.Read(context.Request, cancel);
        if (refusal is not null)
            return refusal;
        var reading = KeyReader.Read(bytes, clock.GetUtcNow());
        if (!reading.Succeeded)
            return SmallBody.Refuse(reading.Violations);
        var caller = context.Caller();
        var body = reading.Value;
        if (!MayGive(caller, body))
            return new Refusal(Problems.ScopeMissing, "Keys of another shop, and keys that may operate, are made with a key with the scope operate.");

        var key = KeyForm.New();
        var row = await desk.Add(key, body.Shop ?? caller.Shop, body.Name, body.Scopes, body.Expires, caller.KeyId, cancel);
        return new JsonAnswer(KeyJson.One(row, key), StatusCodes.Status201Created) { Once = true };
    }

    private static async Task<IResult> End(string id, HttpContext context, ShopScope scope, KeyDesk desk, CancellationToken cancel)
    {
        Widen(context, scope);
        return await desk.End(id, context.Caller().KeyId, cancel)
            ? TypedResults.NoContent()
            : new Refusal(Problems.NotFound, $"There is no key '{id}' that could be ended.");
    }

    private static bool MayGive(Caller caller, KeyBody body) =>
        caller.Has(Scopes.Operate)
        || ((body.Shop is null || body.Shop == caller.Shop) && !body.Scopes.Contains(Scopes.Operate));

    private static void Widen(HttpContext context, ShopScope scope)
    {
        if (context.Caller().Has(Scopes.Operate))
            scope.Shop = null;
    }
}
