namespace CapPrep.Service.Events;

internal static class EventsSetup
{
    public static IServiceCollection AddEvents(this IServiceCollection services) => services
        .AddSingleton<Me>()
        .AddScoped<IDeliverer, Deliverer>()
        .AddScoped<EventLog>()
        .AddScoped<OrderRollUp>()
        .AddScoped<JobEvents>();

    public static void MapEvents(this IEndpointRouteBuilder routes) => ListEvents.Map(routes);
}
