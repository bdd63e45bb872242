using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.TestKit.Service;
using Microsoft.AspNetCore.Http;
using Shouldly;
using StandardWebhooks;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

/// <summary>From the design that comes in to the call that goes out, with workers and clock as they are.</summary>
public sealed class DeliveryFlowTests : IDisposable
{
    // Requests have traces while somebody listens or logs; services of other tests that end take the logger with them.
    private readonly ActivityListener _listener = new()
    {
        ShouldListenTo = source => source.Name == "Microsoft.AspNetCore",
        Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.PropagationData,
    };

    public DeliveryFlowTests() => ActivitySource.AddActivityListener(_listener);

    public void Dispose() => _listener.Dispose();

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_finished_job_arrives_signed_with_the_bytes_of_the_event_log(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var receiver = await Receiver.Start();
        await using var service = await Start(store);
        var secret = await Listen(service.Client, receiver, "job.finished");

        var job = await service.WorkCrest("QW-1", ("echo", JsonNode.Parse("""{"erp":"Zürich ≥ 3"}""")));
        await receiver.Until(1);

        var call = receiver.Calls.ShouldHaveSingleItem();
        var page = await service.Client.GetByteArrayAsync("/v1/events");
        page.AsSpan().IndexOf([.. "{\"items\":["u8, .. call.Body, .. "]"u8]).ShouldBe(0);
        JsonDocument.Parse(call.Body).RootElement.GetProperty("data").Id().ShouldBe(job.Id());
        call.Id.ShouldBe(JsonDocument.Parse(call.Body).RootElement.Id());
        Should.NotThrow(() => new StandardWebhook(secret).Verify(call.Text, Signature(call)));
        call.Headers["content-type"].ShouldBe("application/json");
        call.Headers["user-agent"].ShouldBe("CapPrep/1");
        call.Headers["content-length"].ShouldBe(call.Body.Length.ToString(CultureInfo.InvariantCulture));
        call.Headers["traceparent"].ShouldMatch("^00-[0-9a-f]{32}-[0-9a-f]{16}-0[01]$");
        call.Headers.Keys.Select(name => name.ToLowerInvariant()).Order().ShouldBe(
            ["connection", "content-length", "content-type", "host", "traceparent", "user-agent", "webhook-id", "webhook-signature", "webhook-timestamp"]);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_receiver_gets_its_types_from_its_beginning_on_and_sees_no_false_gap(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var orders = await Receiver.Start();
        await using var jobs = await Receiver.Start();
        await using var elsewhere = await Receiver.Start();
        await using var service = await Start(store);
        await service.WorkCrest("QW-3", ("orderLines", 1));
        await Listen(service.Client, orders, "order.finished");
        await Listen(service.Client, jobs, "job.finished");
        await Listen(service.ClientWith(await service.NewKey("harbor", "manage")), elsewhere, "job.finished");

        for (var order = 4; order <= 8; order++)
            await service.WorkCrest($"QW-{order}", ("orderLines", 1));
        await orders.Until(5);
        await jobs.Until(5);

        foreach (var (receiver, type) in new[] { (orders, "order.finished"), (jobs, "job.finished") })
        {
            var bodies = receiver.Calls.Select(call => JsonDocument.Parse(call.Body).RootElement).OrderBy(Sequence).ToArray();
            bodies.ShouldAllBe(body => body.GetProperty("type").GetString() == type);
            bodies.Select(Sequence).ShouldBe([2, 3, 4, 5, 6]);
            for (var i = 1; i < bodies.Length; i++)
                bodies[i].Text("previousId").ShouldBe(bodies[i - 1].Id());
        }

        elsewhere.Calls.ShouldBeEmpty();
    }

    private static Task<ServiceUnderTest> Start(Store store) => ServiceUnderTest.Start(new ServiceOptions
    {
        Store = store,
        Settings = new Dictionary<string, string?> { ["Webhooks:AllowedNetworks"] = "127.0.0.0/8" },
    });

    private static async Task<string> Listen(HttpClient client, Receiver receiver, string type)
    {
        var answer = await client.Call(HttpMethod.Post, "/v1/webhooks", $$"""{"url":"{{receiver.Address}}","types":["{{type}}"]}""");
        return answer["secret"].GetString()!;
    }

    private static HeaderDictionary Signature(ReceivedCall call) => new()
    {
        ["webhook-id"] = call.Id,
        ["webhook-timestamp"] = call.Timestamp,
        ["webhook-signature"] = call.Signature,
    };

    private static long Sequence(JsonElement body) => body.GetProperty("sequence").GetInt64();
}
