using CapPrep.Service.Access;
using CapPrep.Service.Bench;
using CapPrep.Service.Catalog;
using CapPrep.Service.Decisions;
using CapPrep.Service.Docs;
using CapPrep.Service.Events;
using CapPrep.Service.HotFolder;
using CapPrep.Service.Intake;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Results;
using CapPrep.Service.Storage;
using CapPrep.Service.Webhooks;
using Serilog;

namespace CapPrep.Service.Commands;

/// <summary>The service as a host: what is registered, what is mapped, and what must be done before it listens.</summary>
internal static class ServiceHost
{
    /// <summary>Registers and maps everything; nothing runs yet.</summary>
    /// <param name="builder">With its configuration read.</param>
    /// <param name="settings">Checked settings.</param>
    /// <param name="adjust">For tests: replaces services, such as the clock.</param>
    public static WebApplication Build(
        WebApplicationBuilder builder, Settings settings, Action<IServiceCollection>? adjust = null)
    {
        Listen(builder, settings);
        builder.Services.AddSerilog(log => log.ReadFrom.Configuration(builder.Configuration));
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(25));
        builder.Services
            .AddSingleton(settings)
            .AddSingleton(TimeProvider.System)
            .AddStorage(settings)
            .AddAccess()
            .AddPlumbing()
            .AddDocs()
            .AddCatalog()
            .AddJobs()
            .AddIntake()
            .AddDecisions()
            .AddResults()
            .AddEvents()
            .AddWebhooks()
            .AddHotFolders(settings)
            .AddBench(settings);
        adjust?.Invoke(builder.Services);

        var app = builder.Build();
        app.UsePlumbing();
        app.UseBench();
        app.UseMiddleware<KeyGate>();
        app.MapPlumbing();
        app.MapDocs();
        app.MapAccess();
        app.MapCatalog();
        app.MapIntake();
        app.MapJobs();
        app.MapDecisions();
        app.MapResults();
        app.MapEvents();
        app.MapWebhooks();

        return app;
    }

    /// <summary>Brings tables and first key into being, and tries the hot folders.</summary>
    /// <exception cref="WrongSettingsException">Names every hot folder that cannot be used.</exception>
    public static async Task Prepare(WebApplication app, Settings settings, CancellationToken cancel)
    {
        await DatabaseStart.Prepare(app.Services, settings, cancel);
        await using var scope = app.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<KeyBootstrap>().Run(cancel);
        await scope.ServiceProvider.GetRequiredService<StarterSeed>().OpenAll(cancel);
        var faults = await RootCheck.Faults(scope.ServiceProvider.GetRequiredService<AppDb>(), settings, cancel);
        if (faults.Count > 0)
            throw new WrongSettingsException(faults);
    }

    /// <summary>The checked settings; warnings go to the error stream.</summary>
    /// <exception cref="WrongSettingsException">Names every wrong row.</exception>
    public static Settings Settings(WebApplicationBuilder builder)
    {
        var reading = SettingsReader.Read(builder.Configuration);
        foreach (var line in reading.Warnings)
            Console.Error.WriteLine(line);
        return reading.Settings ?? throw new WrongSettingsException(reading.Faults);
    }

    /// <summary>A builder whose files lie beside the program, wherever it is started from.</summary>
    public static WebApplicationBuilder CreateBuilder(string[] args) => WebApplication.CreateBuilder(new WebApplicationOptions
    {
        Args = args,
        ContentRootPath = AppContext.BaseDirectory,
    });

    private static void Listen(WebApplicationBuilder builder, Settings settings)
    {
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.AddServerHeader = false);
        if (settings.Http.ManagementUrl is not { } management)
            return;
        var urls = builder.Configuration[WebHostDefaults.ServerUrlsKey];
        builder.WebHost.UseUrls($"{urls};{management}");
    }
}
