using CapPrep.Service.Storage;

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
        await app.RunAsync();
        return ExitCode.Success;
    }
}
