using System.Net;
using System.Text;
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

        var answer = await service.Client.PostAsync("/v1/jobs", Example("job-request"), TestContext.Current.CancellationToken);

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

    private static async Task<HttpStatusCode> Put(ServiceUnderTest service, string path, string example, bool create = false)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, path) { Content = Example(example) };
        request.Headers.TryAddWithoutValidation(create ? "If-None-Match" : "If-Match", create ? "*" : "\"1\"");
        using var answer = await service.Client.SendAsync(request, TestContext.Current.CancellationToken);
        if (!answer.IsSuccessStatusCode)
            Assert.Fail(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return answer.StatusCode;
    }

    private static StringContent Example(string name) => new(
        Composition.Contract.Document["components"]!["examples"]![name]!["value"]!.ToJsonString(), Encoding.UTF8, "application/json");
}
