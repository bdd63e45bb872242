using System.Net;

using System.Security.Cryptography;
using CapPrep.Service.Storage;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Results;

/// <summary>A service with one finished job, shared by the tests of the class.</summary>
public sealed class OneJob : IAsyncLifetime
{
    public ServiceUnderTest Service { get; private set; } = null!;

    public string Id { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Service = await ServiceUnderTest.Start();
        Id = (await Service.WorkCrest("QD-1")).Id();
    }

    public ValueTask DisposeAsync() => Service.DisposeAsync();
}

public sealed class DocumentTests(OneJob one) : IClassFixture<OneJob>
{
    [Theory]
    [InlineData("card", null, "application/pdf")]
    [InlineData("card", "image/png", "image/png")]
    [InlineData("card", "text/html, image/svg+xml;q=0.9, */*;q=0.1", "image/svg+xml")]
    [InlineData("card?format=svg", "image/png", "image/svg+xml")]
    [InlineData("proof", null, "image/svg+xml")]
    [InlineData("proof", "*/*", "image/svg+xml")]
    [InlineData("proof?format=pdf", null, "application/pdf")]
    [InlineData("result", null, "application/json")]
    public async Task A_document_is_given_in_the_form_asked_for(string path, string? accept, string contentType)
    {
        using var response = await Get(path, accept);

        response.StatusCode.ShouldBe(HttpStatusCode.OK);
        response.Content.Headers.ContentType!.MediaType.ShouldBe(contentType);
        var bytes = await response.Content.ReadAsByteArrayAsync();
        var sha = SHA256.HashData(bytes);
        response.Headers.ETag!.Tag.ShouldBe($"\"{Convert.ToHexStringLower(sha)}\"");
        response.Headers.GetValues("Content-Digest").ShouldHaveSingleItem().ShouldBe($"sha-256=:{Convert.ToBase64String(sha)}:");
        response.Headers.GetValues("X-Content-Type-Options").ShouldHaveSingleItem().ShouldBe("nosniff");
        response.Headers.GetValues("Content-Security-Policy").ShouldHaveSingleItem().ShouldContain("sandbox");
    }

    [Theory]
    [InlineData("card?format=gif", null, "query-invalid")]
    [InlineData("card", "text/plain", "not-acceptable")]
    [InlineData("tape?version=older", null, "query-invalid")]
    [InlineData("tape?version=proposed", null, "not-found")]
    public async Task A_form_that_there_is_not_is_refused(string path, string? accept, string code)
    {
        using var response = await Get(path, accept);

        (await Answer.Of(response)).Code.ShouldBe(code);
    }

    [Fact]
    public async Task A_document_that_the_caller_has_is_not_sent_again()
    {
        using var first = await Get("proof", null);

        using var request = new HttpRequestMessage(HttpMethod.Get, $"/v1/jobs/{one.Id}/proof");
        request.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await one.Service.Client.SendAsync(request);

        second.StatusCode.ShouldBe(HttpStatusCode.NotModified);
    }

    [Fact]
    public async Task A_picture_drawn_on_request_is_kept()
    {
        using var first = await Get("proof?format=png", null);

        (await one.Service.Look(db => db.JobDocuments.CountAsync(link => link.Job == one.Id && link.Kind == DocumentKinds.ProofPng))).ShouldBe(1);
        using var second = await Get("proof?format=png", null);
        second.Headers.ETag.ShouldBe(first.Headers.ETag);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/result")]
    [InlineData("/card")]
    [InlineData("/proof")]
    [InlineData("/tape")]
    [InlineData("/tape?version=received")]
    public async Task Another_shops_job_is_not_there(string path)
    {
        var client = one.Service.ClientWith(await one.Service.NewKey("pier", "read", "submit", "floor"));

        (await client.Get($"/v1/jobs/{one.Id}{path}")).Code.ShouldBe("not-found");
    }

    [Fact]
    public async Task Documents_of_a_job_that_waits_are_refused_with_a_time_to_come_back()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var id = (await service.Client.Post(Upload.Ticket("QD-2"), Upload.Tape)).Body.Id();

        foreach (var path in new[] { "result", "card", "proof", "tape" })
        {
            var answer = await service.Client.Get($"/v1/jobs/{id}/{path}");
            answer.Code.ShouldBe("job-not-finished");
            answer.Header("Retry-After").ShouldBe("1");
        }
    }

    [Fact]
    public async Task A_document_past_its_retention_is_gone_for_good()
    {
        await using var service = await ServiceUnderTest.Start();
        var id = (await service.WorkCrest("QD-3")).Id();
        var later = TimeProvider.System.GetUtcNow().AddDays(91);

        await service.Within<bool>(null, async services =>
        {
            await services.GetServices<CapPrep.Service.Jobs.ILoop>().OfType<CapPrep.Service.Bench.RetentionLoop>().Single().RunOnce(later, CancellationToken.None);
            return true;
        });

        (await service.Client.Get($"/v1/jobs/{id}/card")).Code.ShouldBe("document-expired");
        (await service.Client.Get($"/v1/jobs/{id}/result")).Status.ShouldBe(HttpStatusCode.OK);
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{id}/tape")).Length.ShouldBeGreaterThan(512);
    }

    private async Task<HttpResponseMessage> Get(string path, string? accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/v1/jobs/{one.Id}/{path}");
        if (accept is not null)
            request.Headers.TryAddWithoutValidation("Accept", accept);
        return await one.Service.Client.SendAsync(request);
    }
}
