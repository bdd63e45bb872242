using System.Net.Http.Headers;
using System.Security.Cryptography;
using CapPrep.Service.Access;
using CapPrep.Service.Commands;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.TestKit.Documents;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace CapPrep.TestKit.Service;

/// <summary>
/// The whole service in this process: real listener on a free port, real database, a data folder of its own. Several
/// may run side by side.
/// </summary>
public sealed class ServiceUnderTest : IAsyncDisposable
{
    private readonly ServiceOptions _options;
    private readonly List<HttpClient> _clients = [];
    private PostgresDatabase? _database;
    private DataFolderLock? _held;
    private WebApplication? _app;

    private ServiceUnderTest(ServiceOptions options)
    {
        _options = options;
        DataFolder = options.DataFolder ?? Directory.CreateTempSubdirectory("capprep-test-").FullName;
    }

    public string DataFolder { get; }

    /// <summary>Address of the public listener.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>A key of the shop <c>main</c> with every scope.</summary>
    public string Key { get; private set; } = null!;

    /// <summary>Calls the service with <see cref="Key"/>.</summary>
    public HttpClient Client { get; private set; } = null!;

    public IServiceProvider Services => _app!.Services;

    public static async Task<ServiceUnderTest> Start(ServiceOptions? options = null)
    {
        var service = new ServiceUnderTest(options ?? new ServiceOptions());
        try
        {
            await service.Start();
            return service;
        }
        catch
        {
            await service.DisposeAsync();
            throw;
        }
    }

    /// <summary>A client with another key, or with none.</summary>
    /// <param name="held">It fails on answers that the API document does not know; false: for answers made up by a test.</param>
    public HttpClient ClientWith(string? key, bool held = true)
    {
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false };
        var client = new HttpClient(held ? new ContractHandler(handler) : handler) { BaseAddress = Address, Timeout = TimeSpan.FromSeconds(100) };
        if (key is not null)
            client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        _clients.Add(client);
        return client;
    }

    /// <summary>Makes a key; a shop that is named for the first time comes into being.</summary>
    public async Task<string> NewKey(string shop, params string[] scopes)
    {
        var key = KeyForm.New();
        await using var scope = Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<KeyDesk>().Add(key, shop, "tests", scopes, null, CancellationToken.None);
        return key;
    }

    /// <summary>Does something with the services of one shop, or of all with null.</summary>
    public async Task<T> Within<T>(string? shop, Func<IServiceProvider, Task<T>> work)
    {
        await using var scope = Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<ShopScope>().Shop = shop;
        return await work(scope.ServiceProvider);
    }

    /// <summary>Looks into the tables of all shops.</summary>
    internal Task<T> Look<T>(Func<AppDb, Task<T>> look) =>
        Within(null, services => look(services.GetRequiredService<AppDb>()));

    /// <summary>Stops as a service manager would: asks, and waits until everything has ended.</summary>
    public async ValueTask DisposeAsync()
    {
        foreach (var client in _clients)
            client.Dispose();
        if (_app is not null)
        {
            await _app.StopAsync();
            await _app.DisposeAsync();
        }

        _held?.Dispose();
        if (_database is not null && _options.Database is null)
            await _database.DisposeAsync();
        if (_options.DataFolder is null)
            RemoveDataFolder();
    }

    private async Task Start()
    {
        if (_options.Store == Store.Postgres)
            _database = _options.Database ?? await PostgresDatabase.Create();
        var builder = ServiceHost.CreateBuilder([]);
        builder.Configuration.AddInMemoryCollection(Configuration());
        var reading = SettingsReader.Read(builder.Configuration);
        var settings = reading.Settings ?? throw new InvalidOperationException(string.Join(Environment.NewLine, reading.Faults));

        _held = CapPrep.Service.Storage.DataFolder.Take(settings);
        _app = ServiceHost.Build(builder, settings, Adjust);
        await ServiceHost.Prepare(_app, settings, CancellationToken.None);
        Key = await FirstKey();
        await _app.StartAsync();
        Address = new Uri(_app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        Client = ClientWith(Key);
    }

    private Dictionary<string, string?> Configuration()
    {
        var all = new Dictionary<string, string?>
        {
            ["Urls"] = "http://127.0.0.1:0",
            ["Serilog:MinimumLevel:Default"] = "Warning",
            ["CapPrep:DataFolder"] = DataFolder,
            ["CapPrep:Http:ManagementUrl"] = "off",
            ["CapPrep:Http:RequestsPerMinute"] = "100000",
            ["CapPrep:Workers:Count"] = "2",
            ["CapPrep:Workers:LeaseSeconds"] = "5",
        };
        if (_database is not null)
            AddPostgres(all, _database);
        foreach (var (name, value) in _options.Settings)
            all[$"CapPrep:{name}"] = value;
        return all;
    }

    private void AddPostgres(Dictionary<string, string?> all, PostgresDatabase database)
    {
        var keyFile = Path.Combine(DataFolder, "test-secrets.key");
        if (!File.Exists(keyFile))
            File.WriteAllText(keyFile, Convert.ToBase64String(RandomNumberGenerator.GetBytes(32)));
        all["CapPrep:Database:Provider"] = "postgres";
        all["CapPrep:Database:ConnectionString"] = database.ConnectionString;
        all["CapPrep:Secrets:KeyFile"] = keyFile;
        all["CapPrep:Access:ManageKey"] = KeyForm.New();
    }

    private void Adjust(IServiceCollection services)
    {
        if (_options.Clock is { } clock)
            services.AddSingleton(clock);
        _options.Adjust?.Invoke(services);
    }

    // On PostgreSQL the first key comes from the settings and may only manage, so one with every scope is made beside it.
    private async Task<string> FirstKey() => _options.Store == Store.Sqlite
        ? await File.ReadAllTextAsync(Path.Combine(DataFolder, KeyBootstrap.FirstKeyFile))
        : await NewKey(ShopScope.Main, [.. Scopes.All]);

    private void RemoveDataFolder()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(DataFolder, recursive: true);
    }
}
