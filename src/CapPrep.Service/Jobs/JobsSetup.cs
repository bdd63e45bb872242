namespace CapPrep.Service.Jobs;

internal static class JobsSetup
{
    public static IServiceCollection AddJobs(this IServiceCollection services) => services
        .AddSingleton<Links>()
        .AddSingleton<JobJson>()
        .AddSingleton<Waiters>()
        .AddScoped<Waiting>()
        .AddScoped<JobView>()
        .AddScoped<JobEraser>();

    public static void MapJobs(this IEndpointRouteBuilder routes)
    {
        GetJob.Map(routes);
        ListJobs.Map(routes);
        DeleteJob.Map(routes);
    }
}
