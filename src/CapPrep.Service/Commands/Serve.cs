using CapPrep.Service.Storage;
using Microsoft.AspNetCore.Connections;

namespace CapPrep.Service.Commands;

/// <summary>Runs the service until it is told to stop.</summary>
internal static class Serve
{
    public static async Task<int> Run(string[] args)
    {
        var options = Options.Parse(args);
        var builder = ServiceHost.CreateBuilder(options.Settings);
        var settings = ServiceHost.Settings(builder);
        using var held = DataFolder.Take(settings);
        await using var app = ServiceHost.Build(builder, settings);
        await ServiceHost.Prepare(app, settings, CancellationToken.None);
        await Start(app);
        await app.WaitForShutdownAsync();
        return ExitCode.Success;
    }

    private static async Task Start(WebApplication app)
    {
        try
        {
            await app.StartAsync();
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException)
        {
            throw new WrongSettingsException([$"{fault.Message} Another address is given with --urls or CapPrep:Http:ManagementUrl."]);
        }
    }
}
