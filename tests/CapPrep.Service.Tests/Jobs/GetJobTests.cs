using System.Net;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Jobs;

public sealed class GetJobTests
{
    [Fact]
    public async Task A_job_that_did_not_change_is_not_sent_again()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var id = (await service.Client.Post(Upload.Ticket("G-1"), Upload.Tape)).Body.Id();
        var first = await service.Client.Get($"/v1/jobs/{id}");

        var same = await service.Client.Get($"/v1/jobs/{id}", ("If-None-Match", first.Header("ETag")!));
        var other = await service.Client.Get($"/v1/jobs/{id}", ("If-None-Match", "W/\"other\""));

        first.Header("ETag")!.ShouldStartWith("W/\"");
        same.Status.ShouldBe(HttpStatusCode.NotModified);
        other.Status.ShouldBe(HttpStatusCode.OK);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Whoever_waits_for_a_job_gets_it_ended(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var id = (await service.Client.Post(Upload.Ticket("G-2"), Upload.Tape)).Body.Id();

        var job = await service.Client.Get($"/v1/jobs/{id}", ("Prefer", "respond-async, wait=60"));

        job["status"].GetString().ShouldBe("finished");
        job.Header("Preference-Applied").ShouldBe("wait=20");
    }

    [Fact]
    public async Task When_enough_wait_the_next_is_answered_at_once()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite, ("Http:MaxWaiting", "0")));

        var answer = await service.Client.Post(Upload.Ticket("G-3"), Upload.Tape, ("Prefer", "wait=20"));

        answer.Status.ShouldBe(HttpStatusCode.Accepted);
        answer.Header("Preference-Applied").ShouldBeNull();
    }

    [Fact]
    public async Task A_stop_lets_everybody_go_who_waits()
    {
        var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        using var client = new HttpClient { BaseAddress = service.Address };
        client.DefaultRequestHeaders.Authorization = service.Client.DefaultRequestHeaders.Authorization;
        var waiting = client.Post(Upload.Ticket("G-4"), Upload.Tape, ("Prefer", "wait=20"));
        await Flow.Until(() => service.Look(db => Task.FromResult(db.Jobs.Any())), "the job is stored");

        await service.DisposeAsync();

        (await waiting).Status.ShouldBe(HttpStatusCode.Accepted);
    }
}
