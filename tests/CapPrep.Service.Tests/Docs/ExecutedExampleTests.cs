using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Documents;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Docs;

/// <summary>What a developer copies out of the document works; the answers are held against the document too.</summary>
public sealed class ExecutedExampleTests
{
    [Fact]
    public async Task The_example_request_makes_a_job()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));

        var answer = await service.Client.PostAsync("/v1/jobs", Example("job-request"), Cancel);

        answer.StatusCode.ShouldBe(HttpStatusCode.Accepted);
    }

    [Fact]
    public async Task The_example_resources_can_be_stored()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));

        (await Put(service, "/v1/cap-styles/quayside-classic", "cap-style", create: true)).ShouldBe(HttpStatusCode.Created);
        (await Put(service, "/v1/cap-frames/wide-270-set-a", "cap-frame", create: true)).ShouldBe(HttpStatusCode.Created);
        (await Put(service, "/v1/machines/eight-head", "machine")).ShouldBe(HttpStatusCode.OK);
        (await Put(service, "/v1/framing-stations/gauge-1", "framing-station")).ShouldBe(HttpStatusCode.OK);
        (await Put(service, "/v1/rule-books/harbor", "rule-book", create: true)).ShouldBe(HttpStatusCode.Created);
        (await Put(service, "/v1/shop", "shop")).ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task The_example_endpoint_can_be_added_changed_and_removed()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));

        var endpoint = await Id(await service.Client.PostAsync("/v1/webhooks", Example("webhook-request"), Cancel));
        var at = $"/v1/webhooks/{endpoint}";
        (await service.Client.GetAsync(at, Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.GetAsync("/v1/webhooks", Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.PatchAsync(at, Example("webhook-patch"), Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.PostAsync(at + "/secret", Example("webhook-secret-request"), Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.PostAsync(at + "/secret", null, Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.GetAsync(at + "/deliveries?state=owed&limit=1", Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.DeleteAsync(at, Cancel)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
        (await service.Client.DeleteAsync(at, Cancel)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task The_example_key_can_be_made_seen_and_ended()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));

        var key = await Id(await service.Client.PostAsync("/v1/keys", Example("key-request"), Cancel));
        (await service.Client.GetAsync("/v1/keys", Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await service.Client.DeleteAsync($"/v1/keys/{key}", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NoContent);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<string> Id(HttpResponseMessage answer)
    {
        var body = await answer.Content.ReadAsStringAsync(Cancel);
        answer.StatusCode.ShouldBe(HttpStatusCode.Created, body);
        return JsonNode.Parse(body)!["id"]!.GetValue<string>();
    }

    private static async Task<HttpStatusCode> Put(ServiceUnderTest service, string path, string example, bool create = false)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, path) { Content = Example(example) };
        request.Headers.TryAddWithoutValidation(create ? "If-None-Match" : "If-Match", create ? "*" : "\"1\"");
        using var answer = await service.Client.SendAsync(request, Cancel);
        if (!answer.IsSuccessStatusCode)
            Assert.Fail(await answer.Content.ReadAsStringAsync(Cancel));
        return answer.StatusCode;
    }

    private static StringContent Example(string name) => new(
        Composition.Contract.Document["components"]!["examples"]![name]!["value"]!.ToJsonString(), Encoding.UTF8, "application/json");
}
