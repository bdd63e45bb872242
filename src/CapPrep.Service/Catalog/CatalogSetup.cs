namespace CapPrep.Service.Catalog;

internal static class CatalogSetup
{
    public static IServiceCollection AddCatalog(this IServiceCollection services) => services;

    public static void MapCatalog(this IEndpointRouteBuilder routes)
    {
    }
}
