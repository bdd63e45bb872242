using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using CapPrep.Service.Access;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Npgsql;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class TwoProcessesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-two-").FullName;
    private readonly string _key = KeyForm.New();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Two_worker_processes_on_PostgreSQL_share_the_work_and_the_dashboard_shows_both()
    {
        Stores.SkipUnlessThere(Store.Postgres);
        const int Jobs = 24;
        await using var database = await PostgresDatabase.Create();
        var (url, management) = (Local(), Local());
        using var one = Start(database, "one", url, management);
        using var client = new HttpClient { BaseAddress = url };
        await Ready(client, one);
        using var two = Start(database, "two", Local(), null);
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await WorkKey(client));
        await Flow.Until(async () => await Count(database, "SELECT COUNT(*) FROM hangfire.server") == 4, "four servers of two processes: " + two.Output);

        await Task.WhenAll(Enumerable.Range(1, Jobs).Select(line => client.Post(Upload.Ticket("TWO", ("line", line.ToString())), Upload.Tape)));
        await Flow.Until(async () => await Count(database, "SELECT COUNT(*) FROM jobs WHERE status = 'Finished'") == Jobs, "all jobs end");

        (await Count(database, "SELECT COUNT(*) FROM jobs WHERE attempts <> 1")).ShouldBe(0);
        (await Count(database, "SELECT COUNT(DISTINCT data ->> 'ServerId') FROM hangfire.state WHERE name = 'Processing' AND data ->> 'ServerId' LIKE 'prepare/%'")).ShouldBe(2);
        using var dashboard = new HttpClient { BaseAddress = management };
        var page = await dashboard.GetStringAsync("/dashboard/servers");
        page.ShouldContain($"/{one.ProcessId}/");
        page.ShouldContain($"/{two.ProcessId}/");
        using var outside = await client.GetAsync("/dashboard/servers");
        outside.StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    private ProgramRun Start(PostgresDatabase database, string name, Uri url, Uri? management)
    {
        var secrets = Path.Combine(_folder, "secrets.key");
        if (!File.Exists(secrets))
            File.WriteAllText(secrets, Convert.ToBase64String(new byte[32]));
        return ProgramRun.Start(
            _folder,
            new Dictionary<string, string>
            {
                ["CapPrep__Access__ManageKey"] = _key,
                ["CapPrep__DataFolder"] = Path.Combine(_folder, name),
                ["CapPrep__Database__Provider"] = "postgres",
                ["CapPrep__Database__ConnectionString"] = database.ConnectionString,
                ["CapPrep__Secrets__KeyFile"] = secrets,
                ["CapPrep__Http__ManagementUrl"] = management?.ToString() ?? "off",
                ["CapPrep__Workers__Count"] = "1",
            },
            "serve",
            "--urls",
            url.ToString());
    }

    private async Task<string> WorkKey(HttpClient client)
    {
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", _key);
        using var body = new StringContent("""{"name":"work","scopes":["submit","read"]}""", System.Text.Encoding.UTF8, "application/json");
        using var response = await client.PostAsync("/v1/keys", body);
        return (await Answer.Of(response))["key"].GetString()!;
    }

    private static Task Ready(HttpClient client, ProgramRun program) => Flow.Until(
        async () =>
        {
            try
            {
                using var response = await client.GetAsync("/health/ready");
                return response.IsSuccessStatusCode;
            }
            catch (HttpRequestException)
            {
                return false;
            }
        },
        "the program becomes ready: " + program.Output);

    private static async Task<long> Count(PostgresDatabase database, string query)
    {
        await using var connection = new NpgsqlConnection(database.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(query, connection);
        return (long)(await command.ExecuteScalarAsync())!;
    }

    private static Uri Local()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return new Uri($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
    }
}
