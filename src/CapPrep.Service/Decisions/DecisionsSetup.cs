namespace CapPrep.Service.Decisions;

internal static class DecisionsSetup
{
    public static IServiceCollection AddDecisions(this IServiceCollection services) => services
        .AddScoped<DecisionEvent>()
        .AddScoped<DecisionEntry>()
        .AddScoped<PostDecision>();

    public static void MapDecisions(this IEndpointRouteBuilder routes) => PostDecision.Map(routes);
}
