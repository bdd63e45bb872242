namespace CapPrep.Service.Bench;

internal static class BenchSetup
{
    public static IServiceCollection AddBench(this IServiceCollection services) => services;

    public static void MapBench(this IEndpointRouteBuilder routes)
    {
    }
}
