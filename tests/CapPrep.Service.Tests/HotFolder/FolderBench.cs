using System.IO.Compression;
using System.Text;
using System.Text.Json;
using CapPrep.Service.HotFolder;
using CapPrep.Service.Tests.Bench;
using CapPrep.TestKit.Service;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CapPrep.Service.Tests.HotFolder;

/// <summary>
/// A service with one hot folder whose keeper makes a round only when a test says so, by a clock that the test moves.
/// Jobs are worked as usual.
/// </summary>
internal sealed class FolderBench : IAsyncDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(3);

    private FolderBench(string root) => Places = new FolderPlaces(root);

    public FolderPlaces Places { get; }

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));

    public ServiceUnderTest Service { get; private set; } = null!;

    public static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    private Keeper Keeper => Service.Services.GetRequiredService<Keeper>();

    /// <param name="works">False: jobs stay queued.</param>
    public static async Task<FolderBench> Start(
        Store store = Store.Sqlite, Dictionary<string, string?>? settings = null, bool works = true, Action<IServiceCollection>? adjust = null)
    {
        Stores.SkipUnlessThere(store);
        var bench = new FolderBench(Directory.CreateTempSubdirectory("capprep-hot-").FullName);
        Directory.CreateDirectory(bench.Places.Drop);
        bench.Service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Clock = bench.Clock,
            Settings = new Dictionary<string, string?>(settings ?? [])
            {
                ["Roles"] = works ? "api,worker" : "api",
                ["HotFolders:0:Root"] = bench.Places.Root,
            },
            Adjust = adjust,
        });
        return bench;
    }

    public void Put(string name, string content) => Put(name, Encoding.UTF8.GetBytes(content));

    public void Put(string name, byte[] content) => File.WriteAllBytes(Path.Combine(Places.Drop, name), content);

    public void PutPair(string name, string ticket, byte[] tape)
    {
        Put(name + ".dst", tape);
        Put(name + ".json", ticket);
    }

    public void PutArchive(string name, params (string Entry, byte[] Content)[] entries)
    {
        using var buffer = new MemoryStream();
        using (var archive = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (entry, content) in entries)
            {
                using var stream = archive.CreateEntry(entry).Open();
                stream.Write(content);
            }
        }

        Put(name, buffer.ToArray());
    }

    /// <summary>One round of the keeper at the clock's time.</summary>
    public Task Round() => Keeper.RunOnce(Clock.GetUtcNow(), Cancel);

    /// <summary>Rounds until what lies in drop has settled and was taken.</summary>
    public async Task Settle()
    {
        await Round();
        Clock.Advance(Quiet);
        await Round();
    }

    /// <summary>Takes in what lies in drop and waits until so many answers lie there.</summary>
    public async Task<string[]> Answers(int count = 1)
    {
        await Settle();
        await Flow.Until(
            async () =>
            {
                Clock.Advance(TimeSpan.FromSeconds(1));
                await Round();
                return Folders(Places.Answers).Length >= count && Status().GetProperty("taken").GetInt32() == 0;
            },
            $"{count} answers");
        return Folders(Places.Answers);
    }

    /// <summary>Takes in what lies in drop; gives the one folder that was returned.</summary>
    public async Task<string> Returned()
    {
        await Settle();
        return Folders(Places.Returned).Single();
    }

    public JsonElement Status() => Read(Places.Status);

    public static JsonElement Read(params string[] path) => JsonDocument.Parse(File.ReadAllBytes(Path.Combine(path))).RootElement;

    /// <summary>Names of what lies in a folder, sorted.</summary>
    public static string[] Names(string folder) =>
        [.. new DirectoryInfo(folder).EnumerateFileSystemInfos().Select(entry => entry.Name).Order(StringComparer.Ordinal)];

    /// <summary>Folders that can be seen.</summary>
    public static string[] Folders(string folder) => !Directory.Exists(folder)
        ? []
        : [.. Directory.EnumerateDirectories(folder).Where(path => !Path.GetFileName(path).StartsWith('.')).Order(StringComparer.Ordinal)];

    public async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        Directory.Delete(Places.Root, recursive: true);
    }
}
