using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The shop's other systems: they send designs and fetch answers with a key that may do no more than that.</summary>
internal sealed class DemoShop : IDisposable
{
    private static readonly (string Document, string Format)[] Papers =
        [("proof", "svg"), ("proof", "png"), ("card", "pdf"), ("card", "png")];

    private readonly HttpClient _client;
    private readonly CancellationToken _stopping;

    private DemoShop(DemoService service)
    {
        _client = new HttpClient { BaseAddress = service.Address };
        _stopping = service.Stopping;
        Use(service.FirstKey);
    }

    /// <summary>The key that the shop's systems use.</summary>
    public string Key { get; private set; } = null!;

    /// <summary>Registers the receiver, hands it its secret, and makes a key of its own for the shop's systems.</summary>
    public static async Task<DemoShop> Open(DemoService service, DemoReceiver receiver)
    {
        var shop = new DemoShop(service);
        var endpoint = await shop.Make("/v1/webhooks", $$"""
            {"url":"{{receiver.Address}}","types":["job.finished","job.failed","drop.returned"],"note":"demo"}
            """);
        receiver.Trust(endpoint.GetProperty("secret").GetString()!);
        var key = await shop.Make("/v1/keys", """{"name":"demo","scopes":["submit","read"]}""");
        shop.Use(shop.Key = key.GetProperty("key").GetString()!);
        return shop;
    }

    /// <summary>Sends designs one after the other and waits for each answer.</summary>
    public async Task<IReadOnlyList<DemoAnswer>> SendByHttp(IReadOnlyList<DemoOrder> orders)
    {
        var answers = new List<DemoAnswer>();
        foreach (var order in orders)
        {
            using var reply = await Post(order);
            var body = await Read(reply);
            answers.Add(reply.IsSuccessStatusCode ? await Answered(order, body) : Refused(order, body));
        }

        return answers;
    }

    /// <summary>Drops designs as pairs, and reads what comes out.</summary>
    public async Task<IReadOnlyList<DemoAnswer>> SendByFolder(DemoFolderDoor door, IReadOnlyList<DemoOrder> orders)
    {
        var answers = new List<DemoAnswer>();
        foreach (var (order, folder) in await door.Send(orders))
        {
            answers.Add(folder is null ? new DemoAnswer(order, "none", "Nothing came out of the hot folder.")
                : door.IsReturned(folder) ? Refused(order, await door.Read(folder)) with { CallOwed = order.Stem }
                : await Answered(order, await door.Read(folder)) with { Papers = folder });
        }

        return answers;
    }

    /// <summary>Fetches card and proof of each job that came by HTTP into a folder of its own.</summary>
    public async Task<IReadOnlyList<DemoAnswer>> FetchPapers(IReadOnlyList<DemoAnswer> answers, DemoFolders folders)
    {
        var fetched = new List<DemoAnswer>();
        foreach (var answer in answers)
            fetched.Add(answer.Job is null ? answer : answer with { Papers = await Fetch(answer.Job, Path.Combine(folders.Papers, answer.Order.Stem)) });
        return fetched;
    }

    public void Dispose() => _client.Dispose();

    private async Task<string> Fetch(string job, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var (document, format) in Papers)
        {
            var bytes = await _client.GetByteArrayAsync($"{job}/{document}?format={format}", _stopping);
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{document}.{format}"), bytes, _stopping);
        }

        return folder;
    }

    private async Task<HttpResponseMessage> Post(DemoOrder order)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent(order.Ticket, Encoding.UTF8, "application/json"), "ticket" },
            { new ByteArrayContent(order.Tape), "tape", order.Stem + ".dst" },
        };
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/jobs") { Content = form };
        request.Headers.Add("Prefer", "wait=20");
        return await _client.SendAsync(request, _stopping);
    }

    /// <summary>A job that failed or has not ended says so in place of a verdict, and has no papers.</summary>
    private async Task<DemoAnswer> Answered(DemoOrder order, JsonElement job)
    {
        var id = job.GetProperty("id").GetString()!;
        if (!job.TryGetProperty("verdict", out var verdict))
            return new DemoAnswer(order, job.GetProperty("status").GetString()!, "There is no result.") { CallOwed = id };
        var counts = job.GetProperty("findings");
        return new DemoAnswer(order, verdict.GetString()!, await ReasonOf(job))
        {
            Job = job.GetProperty("links").GetProperty("self").GetString(),
            CallOwed = id,
            Findings = Enum.GetValues<Severity>().ToDictionary(
                severity => severity,
                severity => counts.GetProperty(severity.ToString().ToLowerInvariant()).GetInt32()),
        };
    }

    private async Task<string> ReasonOf(JsonElement job)
    {
        using var reply = await _client.GetAsync(job.GetProperty("links").GetProperty("result").GetString(), _stopping);
        return MainReason.Of(await Read(reply));
    }

    private static DemoAnswer Refused(DemoOrder order, JsonElement problem)
    {
        var how = order.Door == DemoDoor.Http
            ? $"HTTP {problem.GetProperty("status").GetInt32().ToString(CultureInfo.InvariantCulture)}"
            : "Returned with its reason";
        return new DemoAnswer(
            order,
            $"{ClubOrders.Refused} {problem.GetProperty("code").GetString()}",
            $"{how}: {problem.GetProperty("detail").GetString()}");
    }

    private async Task<JsonElement> Make(string address, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var reply = await _client.PostAsync(address, content, _stopping);
        reply.EnsureSuccessStatusCode();
        return await Read(reply);
    }

    private async Task<JsonElement> Read(HttpResponseMessage reply) =>
        JsonSerializer.Deserialize<JsonElement>(await reply.Content.ReadAsByteArrayAsync(_stopping));

    private void Use(string key) => _client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
}
