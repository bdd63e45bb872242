using CapPrep.Service.Access;
using CapPrep.Service.Storage;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The service as <c>serve</c> runs it, with the demo's settings.</summary>
internal sealed class DemoService : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly IDisposable? _held;

    private DemoService(WebApplication app, IDisposable? held, string firstKey)
    {
        (_app, _held, FirstKey) = (app, held, firstKey);
        Address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    public Uri Address { get; }

    /// <summary>The key that an embedded service makes at its first start; it may do everything.</summary>
    public string FirstKey { get; }

    /// <summary>Ends when somebody stops the program.</summary>
    public CancellationToken Stopping => _app.Lifetime.ApplicationStopping;

    public static async Task<DemoService> Start(DemoFolders folders, DemoReceiver receiver)
    {
        var builder = ServiceHost.CreateBuilder([]);
        // Nothing that this computer or the shell sets may reach the demo.
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddInMemoryCollection(Configuration(folders, receiver));
        var settings = ServiceHost.Settings(builder);
        var held = DataFolder.Take(settings);
        var app = ServiceHost.Build(builder, settings);
        await ServiceHost.Prepare(app, settings, CancellationToken.None);
        await app.StartAsync();
        return new DemoService(app, held, await File.ReadAllTextAsync(Path.Combine(folders.Data, KeyBootstrap.FirstKeyFile)));
    }

    /// <summary>Waits until somebody stops the program; the service itself is stopped when it is disposed of.</summary>
    public async Task UntilStopped()
    {
        var stopped = new TaskCompletionSource();
        await using var heard = Stopping.Register(stopped.SetResult);
        await stopped.Task;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _held?.Dispose();
    }

    private static Dictionary<string, string?> Configuration(DemoFolders folders, DemoReceiver receiver) => new()
    {
        ["Urls"] = "http://127.0.0.1:0",
        ["CapPrep:DataFolder"] = folders.Data,
        ["CapPrep:Http:ManagementUrl"] = "off",
        // The guard calls no address of this computer unless its operator says so: here, this one port.
        ["CapPrep:Webhooks:AllowedNetworks:0"] = $"127.0.0.1:{receiver.Address.Port}",
        ["CapPrep:HotFolders:0:Root"] = folders.Hot,
        ["CapPrep:HotFolders:0:QuietSeconds"] = "1",
        ["CapPrep:HotFolders:0:ScanSeconds"] = "1",
        ["Serilog:MinimumLevel:Default"] = "Information",
        ["Serilog:MinimumLevel:Override:Microsoft"] = "Warning",
        ["Serilog:MinimumLevel:Override:Hangfire"] = "Warning",
        ["Serilog:WriteTo:0:Name"] = "File",
        ["Serilog:WriteTo:0:Args:path"] = folders.Log,
        ["Serilog:WriteTo:0:Args:formatter"] = "Serilog.Formatting.Compact.RenderedCompactJsonFormatter, Serilog.Formatting.Compact",
    };
}
