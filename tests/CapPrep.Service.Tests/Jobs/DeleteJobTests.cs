using System.Net;
using System.Text.Json.Nodes;
using CapPrep.Service.Storage;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Jobs;

public sealed class DeleteJobTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task An_erased_job_leaves_its_event_without_the_callers_data(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var echo = JsonNode.Parse("""{"row":10}""");
        var gone = (await service.WorkCrest("D-1", ("echo", echo))).Id();
        var kept = (await service.WorkCrest("D-2")).Id();

        (await Delete(service, gone)).ShouldBe(HttpStatusCode.NoContent);

        (await service.Client.Get($"/v1/jobs/{gone}")).Code.ShouldBe("not-found");
        (await service.Client.Get($"/v1/jobs/{gone}/result")).Code.ShouldBe("not-found");
        (await service.Look(db => db.JobDocuments.AnyAsync(link => link.Job == gone))).ShouldBeFalse();
        (await service.Look(db => db.Documents.AnyAsync(document => !db.JobDocuments.Any(link => link.Sha256 == document.Sha256)))).ShouldBeFalse();
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{kept}/tape?version=received")).ShouldBe(Upload.Tape);
        var happened = (await service.Client.Get("/v1/events"))["items"][0].GetProperty("data");
        happened.Id().ShouldBe(gone);
        happened.TryGetProperty("echo", out _).ShouldBeFalse();
        (await Delete(service, gone)).ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task The_neighbors_of_an_erased_revision_become_neighbors()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var ids = new List<string>();
        for (var revision = 1; revision <= 3; revision++)
            ids.Add((await service.Client.Post(Upload.Ticket("D-3"), Upload.Tape)).Body.Id());

        await Delete(service, ids[1]);

        (await service.Client.Get($"/v1/jobs/{ids[0]}"))["replacedBy"].GetString().ShouldBe(ids[2]);
        (await service.Client.Get($"/v1/jobs/{ids[2]}"))["replaces"].GetString().ShouldBe(ids[0]);
        await Delete(service, ids[2]);
        (await service.Client.Get($"/v1/jobs/{ids[0]}"))["latest"].GetBoolean().ShouldBeTrue();
    }

    [Fact]
    public async Task A_job_that_is_worked_on_is_not_erased()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var id = (await service.Client.Post(Upload.Ticket("D-4"), Upload.Tape)).Body.Id();
        await service.Look(db => db.ClaimJob(id, "somebody", TimeProvider.System.GetUtcNow(), TimeSpan.FromMinutes(1), CancellationToken.None));

        using var response = await service.Client.DeleteAsync($"/v1/jobs/{id}");

        (await Answer.Of(response)).Code.ShouldBe("job-working");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Jobs_that_end_while_others_with_the_same_tape_are_erased_keep_their_documents(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var ids = new List<string>();
        for (var line = 1; line <= 8; line++)
            ids.Add((await service.WorkCrest("D-5", ("line", line.ToString()))).Id());

        var erasing = Task.WhenAll(ids.Select(id => Delete(service, id)));
        var working = Task.WhenAll(Enumerable.Range(11, 8).Select(line => service.WorkCrest("D-5", ("line", line.ToString()))));

        (await erasing).ShouldAllBe(status => status == HttpStatusCode.NoContent);
        foreach (var job in await working)
            (await service.Client.GetByteArrayAsync($"/v1/jobs/{job.Id()}/tape?version=received")).ShouldBe(Upload.Tape);
        (await service.Look(db => db.JobDocuments.AnyAsync(link => !db.Documents.Any(document => document.Sha256 == link.Sha256)))).ShouldBeFalse();
    }

    private static async Task<HttpStatusCode> Delete(ServiceUnderTest service, string id)
    {
        using var response = await service.Client.DeleteAsync($"/v1/jobs/{id}");
        return response.StatusCode;
    }
}
