using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class TwoHostsTests
{
    [Fact]
    public async Task Two_hosts_in_one_process_do_not_run_each_others_jobs()
    {
        await using var left = await ServiceUnderTest.Start();
        await using var right = await ServiceUnderTest.Start();

        for (var line = 1; line <= 10; line++)
        {
            await left.WorkCrest("LEFT", ("line", line.ToString()));
            await right.WorkCrest("RIGHT", ("line", line.ToString()));
        }

        foreach (var host in new[] { left, right })
        {
            var jobs = await host.Look(db => db.Jobs.ToArrayAsync());
            jobs.Length.ShouldBe(10);
            jobs.ShouldAllBe(job => job.Attempts == 1);
            var server = host.Services.GetRequiredService<JobStorage>().GetMonitoringApi().Servers();
            server.Count.ShouldBe(2);
        }
    }

    [Fact]
    public async Task Two_worker_hosts_on_one_PostgreSQL_share_the_work_and_the_dashboard_shows_both()
    {
        Stores.SkipUnlessThere(Store.Postgres);
        await using var database = await PostgresDatabase.Create();
        var slow = new ServiceOptions
        {
            Store = Store.Postgres,
            Database = database,
            Settings = new Dictionary<string, string?> { ["Workers:Count"] = "1" },
            Adjust = services => services.AddSingleton<CapPrep.Service.Jobs.IPaperMaker, SlowPaper>(),
        };
        await using var one = await ServiceUnderTest.Start(slow);
        await using var two = await ServiceUnderTest.Start(slow);
        var holders = new HashSet<string>();

        await Task.WhenAll(Enumerable.Range(1, 12).Select(line =>
            one.Client.Post(Upload.Ticket("SHARED", ("line", line.ToString())), Upload.Tape)));
        await Flow.Until(
            async () =>
            {
                foreach (var holder in await one.Look(db => db.Jobs.Select(job => job.LeaseHolder).ToArrayAsync()))
                    holders.Add(holder ?? "");
                return await one.Look(db => db.Jobs.AllAsync(job => job.Finished != null));
            },
            "all jobs end");

        holders.Remove("");
        holders.Count.ShouldBe(2);
        (await one.Look(db => db.Jobs.AllAsync(job => job.Attempts == 1))).ShouldBeTrue();
        var servers = one.Services.GetRequiredService<JobStorage>().GetMonitoringApi().Servers();
        servers.Select(server => server.Queues.Single()).Order().ShouldBe(["deliver", "deliver", "prepare", "prepare"]);
    }

    private sealed class SlowPaper : CapPrep.Service.Jobs.IPaperMaker
    {
        private readonly CapPrep.Service.Results.PaperMaker _real = new();

        public CapPrep.Service.Jobs.Papers Make(CapPrep.Service.Jobs.PreparedJob prepared)
        {
            Thread.Sleep(300);
            return _real.Make(prepared);
        }
    }
}
