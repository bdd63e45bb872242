using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Commands;

/// <summary>Keys from the command line; works on the database beside a running service.</summary>
internal static class KeyCommands
{
    public static Task<int> New(string[] args)
    {
        Options.Parse(args);
        Console.WriteLine(KeyForm.New());
        return Task.FromResult(ExitCode.Success);
    }

    public static async Task<int> Add(string[] args)
    {
        var options = Options.Parse(args, "shop", "scopes", "name");
        var shop = options.Require("shop");
        if (!CapPrep.Engine.Reading.ObjectReader.IsId(shop))
            throw new WrongCommandLineException("A shop's id holds a to z, 0 to 9 and hyphens.");
        var scopes = options.Require("scopes").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (scopes.Length == 0 || scopes.FirstOrDefault(scope => !Scopes.All.Contains(scope)) is not null)
            throw new WrongCommandLineException($"Scopes are {string.Join(", ", Scopes.All)}.");
        var name = options.Require("name");

        return await OnDatabase(options, async desk =>
        {
            var key = KeyForm.New();
            await desk.Add(key, shop, name, scopes, null, CancellationToken.None);
            Console.WriteLine(key);
        });
    }

    public static Task<int> List(string[] args) => OnStoredKeys(args, async desk =>
    {
        foreach (var key in await desk.List(CancellationToken.None))
            Console.WriteLine($"{key.Id}  {key.Start}  {key.Shop}  {key.Scopes}  {key.Name}  made {Json.Time(key.Created)}");
    });

    public static async Task<int> End(string id, string[] args)
    {
        var ended = false;
        await OnStoredKeys(args, async desk => ended = await desk.End(id, CancellationToken.None));
        if (ended)
            return ExitCode.Success;
        await Console.Error.WriteLineAsync($"There is no live key {id}.");
        return ExitCode.Refused;
    }

    /// <summary>In a folder without a database there is no key to list or end, and the folder is probably the wrong one.</summary>
    private static Task<int> OnStoredKeys(string[] args, Func<KeyDesk, Task> work)
    {
        var options = Options.Parse(args);
        var settings = ServiceHost.Settings(ServiceHost.CreateBuilder(options.Settings));
        return settings.Database.Provider == DatabaseProvider.Sqlite && !File.Exists(SqliteFile.PathIn(settings.DataFolder))
            ? throw new WrongCommandLineException($"There is no database in {settings.DataFolder}.")
            : OnDatabase(options, work);
    }

    private static async Task<int> OnDatabase(Options options, Func<KeyDesk, Task> work)
    {
        var builder = ServiceHost.CreateBuilder(options.Settings);
        var settings = ServiceHost.Settings(builder);
        var services = new ServiceCollection()
            .AddSingleton(settings)
            .AddSingleton(TimeProvider.System)
            .AddLogging()
            .AddStorage(settings)
            .AddAccess();
        await using var provider = services.BuildServiceProvider();
        // A migrating service may be at work beside us; only a database without tables is brought up here.
        if (settings.Database.Provider == DatabaseProvider.Postgres)
        {
            await DatabaseStart.Prepare(provider, settings, CancellationToken.None);
        }
        else if (!File.Exists(SqliteFile.PathIn(settings.DataFolder)))
        {
            using var held = DataFolder.Take(settings);
            await DatabaseStart.Prepare(provider, settings, CancellationToken.None);
        }

        await using var scope = provider.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<KeyDesk>());
        return ExitCode.Success;
    }
}
