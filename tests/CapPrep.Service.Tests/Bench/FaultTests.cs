using CapPrep.Engine;
using CapPrep.Service.Bench;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class FaultTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_job_that_cannot_be_drawn_fails_after_its_attempts_and_says_so(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Adjust = services => services.AddSingleton<IPaperMaker, TornPaper>(),
        });

        var job = await service.WorkCrest("QF-1");

        job.Text("status").ShouldBe("failed");
        var failure = job.GetProperty("failure");
        failure.Text("code").ShouldBe("drawing-fault");
        failure.GetProperty("attempts").GetInt32().ShouldBe(3);
        failure.Text("errorId").Length.ShouldBe(32);
        failure.Text("message").ShouldNotContain("torn");
        (await service.Client.Get($"/v1/jobs/{job.Id()}/card")).Code.ShouldBe("job-failed");
        var happened = (await service.Client.Get("/v1/events"))["items"].EnumerateArray().ShouldHaveSingleItem();
        happened.Text("type").ShouldBe("job.failed");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_worker_that_lost_its_job_stores_nothing(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(store));
        var id = (await service.Client.Post(Upload.Ticket("QF-2"), Upload.Tape)).Body.Id();
        var (slow, quick) = (await Claim(service, id, "slow", TimeSpan.FromSeconds(-1)), await Claim(service, id, "quick", TimeSpan.FromSeconds(30)));
        slow.ShouldNotBeNull();
        quick.ShouldNotBeNull();

        var stored = await Finish(service, slow, "late");

        stored.ShouldBeFalse();
        (await Finish(service, quick, "early")).ShouldBeTrue();
        (await service.Look(db => db.JobDocuments.Where(link => link.Job == id && link.Kind == DocumentKinds.Result).CountAsync())).ShouldBe(1);
        (await service.ClientWith(service.Key, held: false).GetStringAsync($"/v1/jobs/{id}/result")).ShouldBe("\"early\"");
        (await service.Look(db => db.Events.CountAsync())).ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_job_whose_worker_died_is_swept_up_and_ends(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var ended = (await service.WorkCrest("QF-3")).Id();
        var past = TimeProvider.System.GetUtcNow().AddMinutes(-5);
        await service.Look(db => db.Jobs.Where(job => job.Id == ended).ExecuteUpdateAsync(set => set
            .SetProperty(job => job.Status, JobStatus.Working)
            .SetProperty(job => job.LeaseHolder, "dead")
            .SetProperty(job => job.LeaseUntil, past)));
        await service.Look(db => db.JobDocuments.Where(link => link.Job == ended && link.Kind != DocumentKinds.TapeReceived).ExecuteDeleteAsync());

        await Sweep(service);

        await Flow.Until(async () => (await service.Client.Get($"/v1/jobs/{ended}"))["status"].GetString() == "finished", "the swept job ends");
        (await service.Client.Get($"/v1/jobs/{ended}"))["attempts"].GetInt32().ShouldBe(2);
    }

    [Fact]
    public async Task Jobs_that_died_together_are_suspect_and_keep_their_attempts()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var ids = new List<string>();
        for (var line = 1; line <= 2; line++)
            ids.Add((await service.Client.Post(Upload.Ticket("QF-4", ("line", line.ToString())), Upload.Tape)).Body.Id());
        foreach (var id in ids)
            (await Claim(service, id, "dead", TimeSpan.FromSeconds(-1))).ShouldNotBeNull();

        await Sweep(service);

        var rows = await service.Look(db => db.Jobs.ToArrayAsync());
        rows.ShouldAllBe(job => job.Suspect && job.Attempts == 0 && job.Status == JobStatus.Queued);
    }

    [Fact]
    public async Task A_job_that_kills_its_process_alone_is_given_up()
    {
        await using var service = await ServiceUnderTest.Start();
        var id = (await service.WorkCrest("QF-5")).Id();
        await service.Look(db => db.Jobs.Where(job => job.Id == id).ExecuteUpdateAsync(set => set
            .SetProperty(job => job.Status, JobStatus.Queued)
            .SetProperty(job => job.HandedAt, (DateTimeOffset?)null)
            .SetProperty(job => job.Attempts, 3)));

        await Sweep(service);

        await Flow.Until(async () => (await service.Client.Get($"/v1/jobs/{id}"))["status"].GetString() == "failed", "the job is given up");
        (await service.Client.Get($"/v1/jobs/{id}"))["failure"].Text("code").ShouldBe("too-many-attempts");
    }

    private static Task<bool> Finish(ServiceUnderTest service, Claim claim, string result) =>
        service.Within(claim.Shop, services => services.GetRequiredService<JobEnd>().Finish(
            claim,
            Verdict.SewAsReceived,
            new Papers([new JobPaper(DocumentKinds.Result, Json.ContentType, System.Text.Encoding.UTF8.GetBytes($"\"{result}\""))], "{}"u8.ToArray()),
            CancellationToken.None));

    private static Task<Claim?> Claim(ServiceUnderTest service, string id, string me, TimeSpan lease) =>
        service.Look(db => db.ClaimJob(id, me, TimeProvider.System.GetUtcNow(), lease, CancellationToken.None));

    private static Task<bool> Sweep(ServiceUnderTest service) => service.Within<bool>(null, async services =>
    {
        await services.GetServices<ILoop>().OfType<SweepLoop>().Single().RunOnce(TimeProvider.System.GetUtcNow(), CancellationToken.None);
        return true;
    });

    private sealed class TornPaper : IPaperMaker
    {
        public Papers Make(PreparedJob prepared) => throw new InvalidOperationException("The paper is torn.");
    }
}
