namespace CapPrep.Service.Jobs;

internal static class JobsSetup
{
    public static IServiceCollection AddJobs(this IServiceCollection services) => services;

    public static void MapJobs(this IEndpointRouteBuilder routes)
    {
    }
}
