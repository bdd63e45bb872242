using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Campaigns;

/// <summary>
/// Starts the built program, lets it die at a checkpoint or at a random moment while jobs come in, starts it again
/// and looks at what the caller and the receiver have seen. A caller that got no answer sends its request again
/// with the same Idempotency-Key, as the contract asks of it.
/// </summary>
public static class KillCampaign
{
    private const int Seed = 20261125;

    /// <summary>Every checkpoint once on each store there is, then random moments up to the count.</summary>
    public static async Task<CampaignReport> Run(int count, Action<string> say)
    {
        var faults = new List<string>();
        var chance = new Random(Seed);
        var stores = PostgresDatabase.Server is null ? new[] { Store.Sqlite } : [Store.Sqlite, Store.Postgres];
        var runs = stores.SelectMany(store => Checkpoints.All.Select(point => new Kill(store, point, null)))
            .Concat(Enumerable.Range(0, count).Select(i => new Kill(stores[i % stores.Length], null, TimeSpan.FromMilliseconds(chance.Next(50, 3000)))))
            .Take(count)
            .ToArray();
        foreach (var kill in runs)
        {
            var found = await Once(kill);
            faults.AddRange(found.Select(fault => $"{kill}: {fault}"));
            say($"{kill}: {(found.Count == 0 ? "ok" : string.Join("; ", found))}");
        }

        return new CampaignReport([("kills", runs.Length.ToString(CultureInfo.InvariantCulture)), ("faults", faults.Count.ToString(CultureInfo.InvariantCulture))], faults);
    }

    /// <summary>One kill and what came of it; an empty list is a pass.</summary>
    public static async Task<IReadOnlyList<string>> Once(Kill kill)
    {
        await using var stage = await KillStage.Open(kill);
        await stage.DieOnce();
        await stage.Recover();
        return await stage.Judge();
    }
}

/// <summary>Where and when the program dies.</summary>
/// <param name="Point">A checkpoint; null: at a moment.</param>
/// <param name="After">Time from the first request to the kill; null: at a checkpoint.</param>
public sealed record Kill(Store Store, string? Point, TimeSpan? After)
{
    /// <summary>Designs that come by request.</summary>
    public int Requests { get; init; } = 4;

    /// <summary>Designs that come by hot folder; the last of them cannot be taken.</summary>
    public int Pairs { get; init; } = 3;

    public override string ToString() => Point is null
        ? string.Create(CultureInfo.InvariantCulture, $"{Store} after {After!.Value.TotalMilliseconds:0} ms")
        : $"{Store} at {Point}";
}

/// <summary>
/// One data folder or database, one receiver, one caller, one hot folder, and the program that dies among them.
/// </summary>
internal sealed class KillStage(Kill kill) : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(180);

    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-kill-").FullName;
    private readonly string _key = KeyForm.New();
    private readonly Dictionary<string, string> _accepted = [];
    private readonly HttpClient _client = new() { Timeout = TimeSpan.FromSeconds(10) };
    private readonly KilledFolder _hot = new(kill.Pairs);
    private Receiver _receiver = null!;
    private PostgresDatabase? _database;
    private ProgramRun? _program;
    private Uri _address = null!;
    private bool _hasKey;

    public static async Task<KillStage> Open(Kill kill)
    {
        var stage = new KillStage(kill) { _receiver = await Receiver.Start() };
        Directory.CreateDirectory(stage._hot.Root);
        if (kill.Store == Store.Postgres)
            stage._database = await PostgresDatabase.Create();
        stage._client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", stage._key);
        return stage;
    }

    public async Task DieOnce()
    {
        Start(kill.Point);
        if (kill.Point == Checkpoints.Migrating)
        {
            await _program!.Exit(Patience);
            return;
        }

        await Ready();
        await MakeKey();
        await AddEndpoint();
        _hot.Put();
        var dying = kill.After is { } after ? KillLater(after) : _program!.Exit(Patience);
        await SendAll(stopAtTrouble: true);
        await dying;
    }

    public async Task Recover()
    {
        _program!.Dispose();
        Start(null);
        await Ready();
        if (!_hasKey)
            await MakeKey();
        if (!await HasEndpoint())
            await AddEndpoint();
        _hot.Put();
        await SendAll(stopAtTrouble: false);
    }

    public async Task<IReadOnlyList<string>> Judge()
    {
        var faults = new List<string>();
        if (!await Until(() => Task.FromResult(_accepted.Values.All(id => Told(id).Count > 0) && _hot.IsEmpty)))
            faults.Add($"only {_accepted.Values.Count(id => Told(id).Count > 0)} of {kill.Requests} requests reached the receiver, {_hot}: {Tail()}");
        faults.AddRange(_hot.Faults());
        var jobs = await AllJobs();
        if (jobs.Count != kill.Requests + kill.Pairs - 1)
            faults.Add($"{jobs.Count} jobs are stored for {kill.Requests} requests and {kill.Pairs - 1} pairs");
        await Until(() => Task.FromResult(jobs.All(job => Told(job.GetProperty("id").GetString()!).Count > 0) && Returned().Count > 0));
        foreach (var job in jobs)
            faults.AddRange(JudgeJob(job));
        if (Returned().Select(call => call.Id).Distinct().Count() != 1)
            faults.Add($"one pair was returned, and {Returned().Count} calls say so");
        faults.AddRange(_receiver.Ledger.Faults());
        return faults;
    }

    public async ValueTask DisposeAsync()
    {
        _program?.Dispose();
        _client.Dispose();
        await _receiver.DisposeAsync();
        if (_database is not null)
            await _database.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
        _hot.Dispose();
    }

    private IEnumerable<string> JudgeJob(JsonElement job)
    {
        var id = job.GetProperty("id").GetString()!;
        if (job.GetProperty("status").GetString() != "finished")
            yield return $"job {id} is {job.GetProperty("status")}";
        if (Told(id).Select(call => call.Id).Distinct().Count() is var ends && ends != 1)
            yield return $"job {id} ended {ends} times";
    }

    private async Task<IReadOnlyList<JsonElement>> AllJobs()
    {
        var jobs = new List<JsonElement>();
        var page = await Get("/v1/jobs?limit=200");
        jobs.AddRange(page.GetProperty("items").EnumerateArray());
        while (page.GetProperty("more").GetBoolean())
        {
            page = await Get($"/v1/jobs?limit=200&cursor={page.GetProperty("cursor").GetString()}");
            jobs.AddRange(page.GetProperty("items").EnumerateArray());
        }

        return jobs;
    }

    private IReadOnlyList<ReceivedCall> Told(string job) =>
        [.. _receiver.Calls.Where(call => call.Text.Contains($"\"id\":\"{job}\"", StringComparison.Ordinal))];

    private IReadOnlyList<ReceivedCall> Returned() =>
        [.. _receiver.Calls.Where(call => call.Text.Contains("\"type\":\"drop.returned\"", StringComparison.Ordinal))];

    private void Start(string? failAt)
    {
        _address = new Uri($"http://127.0.0.1:{FreePort()}");
        var environment = new Dictionary<string, string>
        {
            ["CAPPREP_FAIL_AT"] = failAt ?? "",
            ["CapPrep__Access__ManageKey"] = _key,
            ["CapPrep__DataFolder"] = Path.Combine(_folder, "data"),
            ["CapPrep__Http__ManagementUrl"] = "off",
            ["CapPrep__HotFolders__0__Root"] = _hot.Root,
            ["CapPrep__HotFolders__0__QuietSeconds"] = "1",
            ["CapPrep__HotFolders__0__ScanSeconds"] = "1",
            ["CapPrep__Workers__LeaseSeconds"] = "5",
            ["CapPrep__Webhooks__AllowedNetworks"] = "127.0.0.0/8",
            ["CapPrep__Webhooks__TimeoutSeconds"] = "2",
            ["CapPrep__Webhooks__WaitsSeconds"] = "0,1,1,1,1,1,1,1,1,1",
        };
        if (_database is not null)
        {
            var secrets = Path.Combine(_folder, "secrets.key");
            if (!File.Exists(secrets))
                File.WriteAllText(secrets, Convert.ToBase64String(Encoding.ASCII.GetBytes("0123456789abcdef0123456789abcdef")));
            environment["CapPrep__Database__Provider"] = "postgres";
            environment["CapPrep__Database__ConnectionString"] = _database.ConnectionString;
            environment["CapPrep__Secrets__KeyFile"] = secrets;
        }

        _program = ProgramRun.Start(_folder, environment, "serve", "--urls", _address.ToString());
    }

    private async Task KillLater(TimeSpan after)
    {
        await Task.Delay(after);
        _program!.Kill();
    }

    private async Task Ready()
    {
        if (!await Until(async () => await Answers("/health/ready")))
            throw new InvalidOperationException("The program does not become ready: " + Tail());
    }

    private async Task SendAll(bool stopAtTrouble)
    {
        for (var i = 0; i < kill.Requests; i++)
        {
            var key = $"kill-{i}";
            if (_accepted.ContainsKey(key))
                continue;
            if (await Send(key, i) is { } id)
                _accepted[key] = id;
            else if (stopAtTrouble)
                return;
            else
                throw new InvalidOperationException("A request is not answered after the restart: " + Tail());
        }
    }

    /// <summary>Null when the program died under the request.</summary>
    private async Task<string?> Send(string key, int line)
    {
        using var body = new MultipartFormDataContent
        {
            { new StringContent($$"""{"orderNumber":"KILL","line":"{{line}}","capStyle":"six-panel-structured-mid","quantity":8}"""), "ticket" },
            { new ByteArrayContent(TapeBuilder.Crest().ToBytes("CREST")), "tape", "crest.dst" },
        };
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(_address, "/v1/jobs")) { Content = body };
        request.Headers.Add("Idempotency-Key", key);
        try
        {
            using var answer = await _client.SendAsync(request);
            var text = await answer.Content.ReadAsStringAsync();
            if (!answer.IsSuccessStatusCode)
                throw new InvalidOperationException($"{(int)answer.StatusCode}: {text}");
            return JsonDocument.Parse(text).RootElement.GetProperty("id").GetString();
        }
        catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException or IOException)
        {
            return null;
        }
    }

    /// <summary>The key from the settings may manage; the work is done with one that may send and read, too.</summary>
    private async Task MakeKey()
    {
        using var body = new StringContent("""{"name":"campaign","scopes":["manage","submit","read"]}""", Encoding.UTF8, "application/json");
        using var answer = await _client.PostAsync(new Uri(_address, "/v1/keys"), body);
        var text = await answer.Content.ReadAsStringAsync();
        if (answer.StatusCode != HttpStatusCode.Created)
            throw new InvalidOperationException(text);
        var key = JsonDocument.Parse(text).RootElement.GetProperty("key").GetString();
        _client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        _hasKey = true;
    }

    private async Task AddEndpoint()
    {
        using var body = new StringContent($$"""{"url":"{{_receiver.Address}}","types":["job.finished","job.failed","drop.returned"]}""", Encoding.UTF8, "application/json");
        using var answer = await _client.PostAsync(new Uri(_address, "/v1/webhooks"), body);
        if (answer.StatusCode != HttpStatusCode.Created)
            throw new InvalidOperationException(await answer.Content.ReadAsStringAsync());
    }

    private async Task<bool> HasEndpoint() => (await Get("/v1/webhooks")).GetProperty("items").GetArrayLength() > 0;

    private async Task<JsonElement> Get(string path) =>
        JsonDocument.Parse(await _client.GetStringAsync(new Uri(_address, path))).RootElement;

    private async Task<bool> Answers(string path)
    {
        try
        {
            using var answer = await _client.GetAsync(new Uri(_address, path));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static async Task<bool> Until(Func<Task<bool>> reached)
    {
        for (var waited = TimeSpan.Zero; waited < Patience; waited += TimeSpan.FromMilliseconds(100))
        {
            if (await reached())
                return true;
            await Task.Delay(100);
        }

        return false;
    }

    private string Tail()
    {
        var output = _program?.Output ?? "";
        return output.Length <= 2000 ? output : output[^2000..];
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
