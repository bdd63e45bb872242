using CapPrep.Service.Jobs;

namespace CapPrep.Service.Results;

internal static class ResultsSetup
{
    public static IServiceCollection AddResults(this IServiceCollection services) => services
        .AddSingleton<IPaperMaker, PaperMaker>()
        .AddSingleton<DrawingTurn>();

    public static void MapResults(this IEndpointRouteBuilder routes)
    {
        GetResult.Map(routes);
        GetSheet.Map(routes);
        GetTape.Map(routes);
    }
}
