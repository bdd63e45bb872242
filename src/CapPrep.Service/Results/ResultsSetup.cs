namespace CapPrep.Service.Results;

internal static class ResultsSetup
{
    public static IServiceCollection AddResults(this IServiceCollection services) => services;

    public static void MapResults(this IEndpointRouteBuilder routes)
    {
    }
}
