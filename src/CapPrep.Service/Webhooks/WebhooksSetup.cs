using System.Security.Cryptography;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Webhooks;

internal static class WebhooksSetup
{
    private const int JitterSteps = 1_000_000;

    public static IServiceCollection AddWebhooks(this IServiceCollection services) => services
        .AddSingleton<AddressGuard>()
        .AddSingleton(new ReceiverTrust(null))
        .AddSingleton<Door>()
        .AddSingleton<Attempt>()
        .AddSingleton<Lanes>()
        .AddSingleton<Handed>()
        .AddSingleton(provider => new RetrySchedule(provider.GetRequiredService<Settings>().Webhooks.WaitsSeconds))
        .AddSingleton<Jitter>(() => RandomNumberGenerator.GetInt32(JitterSteps + 1) / (double)JitterSteps)
        .AddSingleton<EndpointJson>()
        .AddScoped<EndpointHealth>()
        .AddScoped<SwitchOff>()
        .AddScoped<AttemptLog>()
        .AddScoped<ITargetDeliverer, DeliverWebhook>()
        .AddSingleton<ILoop, DueLoop>();

    public static void MapWebhooks(this IEndpointRouteBuilder routes) => EndpointRoutes.Map(routes);
}
