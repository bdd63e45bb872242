using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using Hangfire;
using Hangfire.Dashboard;

namespace CapPrep.Service.Bench;

internal static class BenchSetup
{
    public static IServiceCollection AddBench(this IServiceCollection services, Settings settings) => services
        .AddHangfireOfThisHost(settings)
        .AddSingleton<Worker>()
        .AddSingleton(_ => new AloneGate(settings.Workers.Count))
        .AddSingleton<IHandover, Handover>()
        .AddSingleton<ILoop, LeaseLoop>()
        .AddSingleton<ILoop, SweepLoop>()
        .AddSingleton<ILoop, RetentionLoop>()
        .AddSingleton<SheetShelf>()
        .AddScoped<PinnedSetup>()
        .AddScoped<BoundWork>()
        .AddScoped<EarlierRevision>()
        .AddScoped<JobEnd>()
        .AddScoped<PrepareJob>();

    /// <summary>
    /// The dashboard answers on the management listener only, whatever the caller's address: behind a proxy every
    /// caller looks local.
    /// </summary>
    public static void UseBench(this WebApplication app)
    {
        if (app.Services.GetRequiredService<Settings>().Http.ManagementUrl is not { } management)
            return;
        app.MapWhen(
            context => context.Connection.LocalPort == management.Port && context.Request.Path.StartsWithSegments("/dashboard"),
            branch => branch.UseHangfireDashboard(
                "/dashboard",
                new DashboardOptions
                {
                    Authorization = [new ManagementListener(management.Port)],
                    DashboardTitle = "CapPrep work",
                    DisplayStorageConnectionString = false,
                    IsReadOnlyFunc = _ => true,
                    AppPath = null,
                },
                app.Services.GetRequiredService<JobStorage>()));
    }

    private sealed class ManagementListener(int port) : IDashboardAuthorizationFilter
    {
        public bool Authorize(DashboardContext context) => context.GetHttpContext().Connection.LocalPort == port;
    }
}
