using CapPrep.Service.Access;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Webhooks;

/// <summary>The addresses under /v1/webhooks.</summary>
internal static class EndpointRoutes
{
    /// <summary>What the audit calls an endpoint.</summary>
    public const string Kind = "webhook";

    public static void Map(IEndpointRouteBuilder routes)
    {
        var group = routes.MapGroup("/v1/webhooks").WithTags("Webhooks");
        group.MapPost("", AddEndpoint.Handle).Admits(Scopes.Manage)
            .WithName("addWebhook").WithSummary("Adds a receiver of events; answers once with its secret.");
        group.MapGet("", List).Admits(Scopes.Manage)
            .WithName("listWebhooks").WithSummary("Lists the receivers of events.");
        group.MapGet("/{id}", Get).Admits(Scopes.Manage)
            .WithName("getWebhook").WithSummary("Shows a receiver of events.");
        group.MapPatch("/{id}", ChangeEndpoint.Handle).Admits(Scopes.Manage)
            .WithName("changeWebhook").WithSummary("Changes url, types, note or state of a receiver (JSON merge patch).");
        group.MapDelete("/{id}", RemoveEndpoint.Handle).Admits(Scopes.Manage)
            .WithName("removeWebhook").WithSummary("Removes a receiver; what it is still owed is given up.");
        group.MapPost("/{id}/secret", RotateSecret.Handle).Admits(Scopes.Manage)
            .WithName("rotateWebhookSecret").WithSummary("Makes a new secret; answers once with it. The old one signs too until the overlap ends.");
        group.MapPost("/{id}/test", TestEndpoint.Handle).Admits(Scopes.Manage)
            .WithName("testWebhook").WithSummary("Sends one event webhook.test, once.");
        group.MapGet("/{id}/deliveries", GetDeliveries.List).Admits(Scopes.Read, Scopes.Manage)
            .WithName("listDeliveries").WithSummary("Lists deliveries to a receiver, newest first.");
        group.MapGet("/{id}/deliveries/{delivery}", GetDeliveries.One).Admits(Scopes.Read, Scopes.Manage)
            .WithName("getDelivery").WithSummary("Shows a delivery with every attempt.");
    }

    public static Refusal NoEndpoint(string id) => new(Problems.NotFound, $"There is no webhook endpoint '{id}'.");

    private static async Task<IResult> List(AppDb db, EndpointJson json, CancellationToken cancel) =>
        new JsonAnswer(json.List(await db.Endpoints.AsNoTracking().OrderBy(row => row.Id).ToArrayAsync(cancel)));

    private static async Task<IResult> Get(string id, AppDb db, EndpointJson json, CancellationToken cancel) =>
        await db.Endpoints.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel) is { } row
            ? new JsonAnswer(json.One(row))
            : NoEndpoint(id);
}
