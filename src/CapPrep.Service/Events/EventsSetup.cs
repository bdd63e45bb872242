namespace CapPrep.Service.Events;

internal static class EventsSetup
{
    public static IServiceCollection AddEvents(this IServiceCollection services) => services;

    public static void MapEvents(this IEndpointRouteBuilder routes)
    {
    }
}
