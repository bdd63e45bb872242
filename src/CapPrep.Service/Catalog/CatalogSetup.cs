using CapPrep.Service.Access;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Catalog;

internal static class CatalogSetup
{
    private const string Tag = "Catalog";

    public static IServiceCollection AddCatalog(this IServiceCollection services) => services
        .AddScoped<GetResources>()
        .AddScoped<EffectiveBook>()
        .AddScoped<ResourceCheck>()
        .AddScoped<ChangeResource>();

    public static void MapCatalog(this IEndpointRouteBuilder routes)
    {
        foreach (var kind in ResourceKind.Listed)
        {
            MapReading(routes, kind);
            MapChanging(routes, kind);
        }

        MapShop(routes);
    }

    private static void MapReading(IEndpointRouteBuilder routes, ResourceKind kind)
    {
        var list = $"/v1/{kind.Path}";
        routes.MapGet(list, (HttpRequest request, GetResources get, CancellationToken cancel) => get.List(kind, request, cancel))
            .WithName($"list{kind.One}s").WithSummary($"Every {kind.Noun} in use, newest versions").WithTags(Tag)
            .Admits(Scopes.Fit, Scopes.Read, Scopes.Manage);
        MapOne(routes, kind, $"{list}/{{id}}")
            .WithName($"get{kind.One}").WithSummary($"One {kind.Noun}, the newest version or another").WithTags(Tag)
            .Admits(Scopes.Read, Scopes.Manage);
        routes.MapGet($"{list}/{{id}}/versions", (string id, HttpRequest request, GetResources get, CancellationToken cancel) => get.Versions(kind, id, request, cancel))
            .WithName($"list{kind.One}Versions").WithSummary($"The versions of one {kind.Noun}, newest first").WithTags(Tag)
            .Admits(Scopes.Read, Scopes.Manage);
    }

    private static RouteHandlerBuilder MapOne(IEndpointRouteBuilder routes, ResourceKind kind, string path) => kind == ResourceKind.RuleBooks
        ? routes.MapGet(path, (string id, HttpRequest request, GetResources get, EffectiveBook effective, CancellationToken cancel) =>
            EffectiveBook.IsAskedFor(request) ? effective.Get(id, request, cancel) : get.One(kind, id, request, cancel))
        : routes.MapGet(path, (string id, HttpRequest request, GetResources get, CancellationToken cancel) => get.One(kind, id, request, cancel));

    private static void MapChanging(IEndpointRouteBuilder routes, ResourceKind kind)
    {
        var path = $"/v1/{kind.Path}/{{id}}";
        routes.MapPut(path, (string id, HttpContext context, ChangeResource change, CancellationToken cancel) => change.Put(kind, id, context, cancel))
            .WithName($"put{kind.One}").WithSummary($"Creates a {kind.Noun} or adds a version").WithTags(Tag)
            .Admits(Scopes.Manage);
        routes.MapDelete(path, (string id, HttpContext context, ChangeResource change, CancellationToken cancel) => change.Retire(kind, id, context, cancel))
            .WithName($"retire{kind.One}").WithSummary($"Retires a {kind.Noun}; jobs keep the version they have").WithTags(Tag)
            .Admits(Scopes.Manage);
    }

    private static void MapShop(IEndpointRouteBuilder routes)
    {
        const string Path = "/v1/shop";
        routes.MapGet(Path, (HttpRequest request, GetResources get, ShopScope scope, CancellationToken cancel) =>
                get.One(ResourceKind.Shop, scope.Required, request, cancel))
            .WithName("getShop").WithSummary("What this shop has decided for all its jobs").WithTags(Tag)
            .Admits(Scopes.Read, Scopes.Manage);
        routes.MapPut(Path, (HttpContext context, ChangeResource change, ShopScope scope, CancellationToken cancel) =>
                change.Put(ResourceKind.Shop, scope.Required, context, cancel))
            .WithName("putShop").WithSummary("Adds a version of the shop's decisions").WithTags(Tag)
            .Admits(Scopes.Manage);
    }
}
