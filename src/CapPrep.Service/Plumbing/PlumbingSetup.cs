namespace CapPrep.Service.Plumbing;

internal static class PlumbingSetup
{
    public static IServiceCollection AddPlumbing(this IServiceCollection services) => services;

    public static void UsePlumbing(this WebApplication app)
    {
    }

    public static void MapPlumbing(this IEndpointRouteBuilder routes)
    {
    }
}
