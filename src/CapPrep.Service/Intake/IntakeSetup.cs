using CapPrep.Service.Calls;

namespace CapPrep.Service.Intake;

internal static class IntakeSetup
{
    public static IServiceCollection AddIntake(this IServiceCollection services) => services
        .AddScoped<SkuLookup>()
        .AddScoped<PinDesk>()
        .AddScoped<Inspection>()
        .AddScoped<Idempotency>()
        .AddScoped<JobEntry>()
        .AddScoped<IntakeDesk>()
        .AddScoped<PostJob>();

    public static void MapIntake(this IEndpointRouteBuilder routes) => PostJob.Map(routes);
}
