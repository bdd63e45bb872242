using System.Net;
using System.Net.Http.Headers;
using System.Text;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Plumbing;

/// <summary>What HTTP promises of every address.</summary>
public sealed class HttpTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Theory]
    [InlineData("/health/live")]
    [InlineData("/v1/shop")]
    [InlineData("/v1/jobs")]
    public async Task Head_is_answered_as_get_without_a_body(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, path);
        using var head = await quiet.Client.SendAsync(request, TestContext.Current.CancellationToken);
        using var get = await quiet.Client.GetAsync(path, TestContext.Current.CancellationToken);

        head.StatusCode.ShouldBe(HttpStatusCode.OK);
        head.Content.Headers.ContentType.ShouldBe(get.Content.Headers.ContentType);
        head.Headers.ETag.ShouldBe(get.Headers.ETag);
        (await head.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_packed_body_is_refused_for_being_packed()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/jobs") { Content = new ByteArrayContent([0x1F, 0x8B, 8, 0]) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Content.Headers.ContentEncoding.Add("gzip");

        using var response = await quiet.Client.SendAsync(request, TestContext.Current.CancellationToken);

        var answer = await Answer.Of(response);
        answer.Code.ShouldBe("media-type-unknown");
        answer["detail"].GetString().ShouldBe("A body with Content-Encoding is not read; send it unpacked.");
    }

    [Fact]
    public async Task A_refused_content_type_is_told_all_that_are_read()
    {
        const string Body = """{"url":"https://erp.shop.example/capprep","types":["job.finished"]}""";
        var made = await quiet.Client.Call(HttpMethod.Post, "/v1/webhooks", Body);
        using var request = new HttpRequestMessage(HttpMethod.Patch, $"/v1/webhooks/{made["id"].GetString()}")
        {
            Content = new StringContent("{}", Encoding.UTF8, "text/plain"),
        };

        using var response = await quiet.Client.SendAsync(request, TestContext.Current.CancellationToken);

        (await Answer.Of(response))["detail"].GetString().ShouldBe("This address reads application/merge-patch+json and application/json.");
    }

    [Fact]
    public async Task Parameters_of_deliveries_are_named_as_everywhere()
    {
        const string Body = """{"url":"https://erp.shop.example/capprep","types":["job.finished"]}""";
        var made = await quiet.Client.Call(HttpMethod.Post, "/v1/webhooks", Body);

        var answer = await quiet.Client.Get($"/v1/webhooks/{made["id"].GetString()}/deliveries?state=lost&limit=0&size=1");

        answer.Code.ShouldBe("query-invalid");
        answer["detail"].GetString().ShouldBe("Wrong in the query: size, state, limit.");
        answer.Faults.ShouldBe(["size unknown-field", "state bad-format", "limit out-of-range"]);
    }

    [Fact]
    public async Task Every_link_of_a_finished_job_leads_somewhere()
    {
        await using var service = await ServiceUnderTest.Start();

        var job = await service.WorkCrest("QB 7/1");

        foreach (var link in job.GetProperty("links").EnumerateObject())
        {
            using var response = await service.Client.GetAsync(link.Value.GetString(), TestContext.Current.CancellationToken);
            response.StatusCode.ShouldBe(HttpStatusCode.OK, link.Name);
        }

        var order = await service.Client.Get(job.GetProperty("links").GetProperty("order").GetString()!);
        order["items"].EnumerateArray().ShouldHaveSingleItem().GetProperty("orderNumber").GetString().ShouldBe("QB 7/1");
    }
}
