namespace CapPrep.Service.Intake;

internal static class IntakeSetup
{
    public static IServiceCollection AddIntake(this IServiceCollection services) => services;

    public static void MapIntake(this IEndpointRouteBuilder routes)
    {
    }
}
