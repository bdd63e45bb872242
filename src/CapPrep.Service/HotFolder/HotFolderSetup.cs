using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.HotFolder;

internal static class HotFolderSetup
{
    public static IServiceCollection AddHotFolders(this IServiceCollection services, Settings settings)
    {
        services
            .AddSingleton<KeptRoots>()
            .AddSingleton(settings.Uploads)
            .AddSingleton<DropContents>()
            .AddScoped<Drops>()
            .AddScoped<ReturnDrop>()
            .AddScoped<TakeDrop>()
            .AddScoped<AnswerFolder>()
            .AddScoped<AnswerDrop>()
            .AddScoped<DeliverAnswer>()
            .AddScoped<ITargetDeliverer>(provider => provider.GetRequiredService<DeliverAnswer>());
        foreach (var folder in settings.HotFolders)
            services.AddSingleton(provider => ActivatorUtilities.CreateInstance<Keeper>(provider, folder));
        if (settings.Has(Role.Folder) && settings.HotFolders.Count > 0)
            services.AddHostedService<KeeperService>();
        return services;
    }
}
