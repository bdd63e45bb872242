using CapPrep.Service.HotFolder;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class KeeperTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("capprep-hot-");

    public void Dispose() => _root.Delete(recursive: true);

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task An_answer_that_cannot_be_written_is_named_and_written_later(Store store)
    {
        await using var bench = await FolderBench.Start(store);
        bench.PutPair("lions", Upload.Ticket("HK-1"), Upload.Tape);
        await bench.Round();
        Directory.Delete(bench.Places.Answers);
        await bench.Settle();
        Directory.Delete(bench.Places.Answers);
        await File.WriteAllTextAsync(bench.Places.Answers, "in the way", FolderBench.Cancel);
        await Flow.Until(
            async () =>
            {
                bench.Clock.Advance(TimeSpan.FromSeconds(11));
                await bench.Round();
                return bench.Status().GetProperty("trouble").EnumerateArray().Any(line => line.GetString()!.StartsWith("An answer cannot be written", StringComparison.Ordinal));
            },
            "the trouble is named");
        bench.Status().GetProperty("taken").GetInt32().ShouldBe(1);

        File.Delete(bench.Places.Answers);
        bench.Clock.Advance(TimeSpan.FromSeconds(11));
        var folder = (await bench.Answers()).Single();

        FolderBench.Names(folder).ShouldContain("answer.json");
        await bench.Round();
        bench.Status().GetProperty("trouble").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task A_folder_that_goes_away_and_comes_back_is_kept_on()
    {
        await using var bench = await FolderBench.Start(works: false);
        await bench.Round();
        var away = bench.Places.Root + "-away";
        Directory.Move(bench.Places.Root, away);
        await File.WriteAllTextAsync(bench.Places.Root, "", FolderBench.Cancel);
        await bench.Round();
        File.Delete(bench.Places.Root);
        Directory.Move(away, bench.Places.Root);
        bench.PutPair("lions", Upload.Ticket("HK-2"), Upload.Tape);

        await bench.Settle();

        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);
    }

    [Fact]
    public async Task While_too_many_jobs_wait_nothing_more_is_taken()
    {
        await using var bench = await FolderBench.Start(works: false, settings: new Dictionary<string, string?> { ["Queue:MaxWaiting"] = "2" });
        foreach (var name in new[] { "a", "b", "c" })
            bench.PutPair(name, Upload.Ticket("HK-3", ("line", name)), Upload.Tape);
        await bench.Settle();
        await bench.Round();

        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(2);
        bench.Status().GetProperty("trouble").EnumerateArray().Single().GetString()!.ShouldContain("2 jobs are waiting");

        await bench.Service.Look(db => db.Jobs.ExecuteUpdateAsync(set => set.SetProperty(job => job.Status, JobStatus.Finished)));
        await bench.Round();
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(3);
    }

    [Fact]
    public async Task What_was_kept_long_enough_goes()
    {
        await using var bench = await FolderBench.Start(works: false);
        await bench.Round();
        foreach (var day in new[] { "2026-10-25", "2026-10-26", "2026-11-25", "notes" })
            Directory.CreateDirectory(Path.Combine(bench.Places.Kept, day, "lions.1"));
        bench.Clock.Advance(TimeSpan.FromHours(1));

        await bench.Round();

        FolderBench.Names(bench.Places.Kept).ShouldBe(["2026-10-26", "2026-11-25", "notes"]);
    }

    [Fact]
    public async Task An_erased_job_gives_its_pair_back()
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutPair("lions", Upload.Ticket("HK-4"), Upload.Tape);
        await bench.Settle();
        var job = await bench.Service.Look(db => db.Jobs.SingleAsync());
        (await bench.Service.Client.DeleteAsync($"/v1/jobs/{job.Id}", FolderBench.Cancel)).EnsureSuccessStatusCode();

        var folder = await bench.Returned();

        FolderBench.Read(folder, "reason.json").Text("code").ShouldBe("not-found");
    }

    [Fact]
    public async Task Of_two_processes_one_keeps_the_folder_and_the_other_takes_over()
    {
        Stores.SkipUnlessThere(Store.Postgres);
        await using var database = await PostgresDatabase.Create();
        var options = new ServiceOptions
        {
            Store = Store.Postgres,
            Database = database,
            Settings = new Dictionary<string, string?> { ["HotFolders:0:Root"] = _root.FullName, ["HotFolders:0:QuietSeconds"] = "1", ["HotFolders:0:ScanSeconds"] = "1", ["Workers:LeaseSeconds"] = "5" },
        };
        var one = await ServiceUnderTest.Start(options);
        await using var two = await ServiceUnderTest.Start(options);
        await Flow.Until(() => Task.FromResult(Keeps(one, _root.FullName)), "the first keeps the folder");
        var places = new FolderPlaces(_root.FullName);
        for (var line = 1; line <= 6; line++)
            Put(places, line);
        await Flow.Until(() => Task.FromResult(FolderBench.Folders(places.Answers).Length == 6), "six answers");
        Keeps(two, _root.FullName).ShouldBeFalse();

        await one.DisposeAsync();
        await Flow.Until(() => Task.FromResult(Keeps(two, _root.FullName)), "the second takes over");
        for (var line = 7; line <= 12; line++)
            Put(places, line);

        await Flow.Until(() => Task.FromResult(FolderBench.Folders(places.Answers).Length == 12), "twelve answers");
        (await two.Look(db => db.Jobs.CountAsync())).ShouldBe(12);
        (await two.Look(db => db.Leases.SingleAsync(row => row.Name.StartsWith("folder:")))).Fence.ShouldBe(2);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_restart_goes_on_from_every_step(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var bench = await FolderBench.Start(store);
        bench.PutPair("lions", Upload.Ticket("HK-5"), Upload.Tape);
        await bench.Answers();
        var drop = await bench.Service.Look(db => db.Drops.AsNoTracking().SingleAsync());
        foreach (var step in new[] { "tapeTaken", "ticketTaken", "accepted", "answerWritten" })
        {
            Directory.CreateDirectory(bench.Places.TakenOf(drop.Id));
            await File.WriteAllBytesAsync(Path.Combine(bench.Places.TakenOf(drop.Id), "lions.dst"), Upload.Tape, FolderBench.Cancel);
            await File.WriteAllTextAsync(Path.Combine(step == "tapeTaken" ? bench.Places.Drop : bench.Places.TakenOf(drop.Id), "lions.json"), Upload.Ticket("HK-5"), FolderBench.Cancel);
            await bench.Service.Look(db => db.Deliveries.ExecuteUpdateAsync(set => set.SetProperty(row => row.State, DeliveryState.Owed).SetProperty(row => row.NextAt, bench.Clock.GetUtcNow())));
            await bench.Service.Look(db => db.Drops.ExecuteUpdateAsync(set => set.SetProperty(row => row.State, DropState.Taken).SetProperty(row => row.Step, step).SetProperty(row => row.Ended, (DateTimeOffset?)null)));
            Directory.Delete(bench.Places.Answers, recursive: true);
            Directory.Delete(bench.Places.Kept, recursive: true);

            await bench.Round();

            FolderBench.Folders(bench.Places.Answers).Length.ShouldBe(step == "answerWritten" ? 0 : 1, step);
            FolderBench.Names(bench.Places.Taken).ShouldBeEmpty(step);
            (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);
            (await bench.Service.Look(db => db.Drops.AsNoTracking().SingleAsync())).State.ShouldBe(DropState.Answered, step);
        }
    }

    [Fact]
    public async Task A_drop_that_was_noted_and_not_taken_is_taken_again()
    {
        await using var bench = await FolderBench.Start(works: false);
        await bench.Round();
        bench.PutPair("lions", Upload.Ticket("HK-6"), Upload.Tape);
        await bench.Settle();
        var noted = await bench.Service.Look(db => db.Drops.AsNoTracking().SingleAsync());
        await bench.Service.Look(db => db.Jobs.ExecuteDeleteAsync());
        await bench.Service.Look(db => db.Idempotency.ExecuteDeleteAsync());
        await bench.Service.Look(db => db.Drops.ExecuteUpdateAsync(set => set.SetProperty(row => row.State, DropState.Waiting).SetProperty(row => row.Step, "noted")));
        Directory.Delete(bench.Places.TakenOf(noted.Id), recursive: true);

        await bench.Round();
        (await bench.Service.Look(db => db.Drops.CountAsync())).ShouldBe(0);
        bench.PutPair("lions", Upload.Ticket("HK-6"), Upload.Tape);
        await bench.Settle();

        (await bench.Service.Look(db => db.Drops.SingleAsync())).Id.ShouldNotBe(noted.Id);
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);
    }

    [Fact]
    public async Task A_drop_that_is_tried_without_end_is_given_back()
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutPair("lions", Upload.Ticket("HK-7"), Upload.Tape);
        await bench.Settle();
        await bench.Service.Look(db => db.Drops.ExecuteUpdateAsync(set => set.SetProperty(row => row.Step, "ticketTaken").SetProperty(row => row.Tries, 5)));

        var folder = await bench.Returned();

        FolderBench.Read(folder, "reason.json").Text("code").ShouldBe("our-fault");
    }

    private static bool Keeps(ServiceUnderTest service, string root) => service.Services.GetRequiredService<KeptRoots>().Has(root);

    private static void Put(FolderPlaces places, int line)
    {
        File.WriteAllBytes(Path.Combine(places.Drop, $"cap{line}.dst"), Upload.Tape);
        File.WriteAllText(Path.Combine(places.Drop, $"cap{line}.json"), Upload.Ticket("HK-8", ("line", line.ToString())));
    }
}
