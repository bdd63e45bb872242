namespace CapPrep.Service.Docs;

internal static class DocsSetup
{
    public static IServiceCollection AddDocs(this IServiceCollection services) => services;

    public static void MapDocs(this IEndpointRouteBuilder routes) => ProblemPages.Map(routes);
}
