namespace CapPrep.Service.Webhooks;

internal static class WebhooksSetup
{
    public static IServiceCollection AddWebhooks(this IServiceCollection services) => services;

    public static void MapWebhooks(this IEndpointRouteBuilder routes)
    {
    }
}
