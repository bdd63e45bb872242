using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class PairTests
{
    private static readonly byte[] TooTall = TapeBuilder.Seated(400, 900).ToBytes("TALL");

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_settled_pair_is_answered_with_everything_a_machine_and_a_program_need(Store store)
    {
        await using var bench = await FolderBench.Start(store);
        bench.PutPair("lions-front", Upload.Ticket("HF-1", ("echo", new JsonObject { ["row"] = 7 })), Upload.Tape);

        var folder = (await bench.Answers()).Single();

        Path.GetFileName(folder).ShouldBe("lions-front.1");
        FolderBench.Names(folder).ShouldBe(["1.DST", "answer.json", "card.pdf", "proof.png", "proof.svg", "result.json"]);
        var answer = FolderBench.Read(folder, "answer.json");
        answer.Text("verdict").ShouldBe("sewAsReceived");
        answer.Text("door").ShouldBe("folder");
        answer.Text("fileName").ShouldBe("lions-front.dst");
        answer.GetProperty("drop").Text("name").ShouldBe("lions-front");
        answer.GetProperty("echo").GetProperty("row").GetInt32().ShouldBe(7);
        answer.TryGetProperty("duplicateOf", out _).ShouldBeFalse();
        foreach (var file in answer.GetProperty("files").EnumerateArray())
            file.Text("sha256").ShouldBe(Sha(Path.Combine(folder, file.Text("name"))));
        answer.GetProperty("files").GetArrayLength().ShouldBe(5);
        answer.GetProperty("tapeToSew").Text("sha256").ShouldBe(Sha(Path.Combine(folder, "1.DST")));
        FolderBench.Names(Path.Combine(bench.Places.Kept, "2026-11-25", "lions-front.1")).ShouldBe(["lions-front.dst", "lions-front.json"]);
        FolderBench.Names(bench.Places.Drop).ShouldBeEmpty();
        FolderBench.Names(bench.Places.Taken).ShouldBeEmpty();
        FolderBench.Names(bench.Places.Answers).ShouldBe(["lions-front.1"]);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_job_from_the_folder_is_seen_through_the_other_door_too(Store store)
    {
        await using var bench = await FolderBench.Start(store);
        bench.PutPair("lions-front", Upload.Ticket("HF-2"), Upload.Tape);

        var answer = FolderBench.Read((await bench.Answers()).Single(), "answer.json");

        var job = (await bench.Service.Client.Get($"/v1/jobs/{answer.Id()}")).Body;
        job.Text("door").ShouldBe("folder");
        job.Text("drop").ShouldBe(answer.GetProperty("drop").Text("id"));
        (await bench.Service.Client.GetByteArrayAsync($"/v1/jobs/{answer.Id()}/proof?format=png")).ShouldBe(
            await File.ReadAllBytesAsync(Path.Combine(bench.Places.Answers, "lions-front.1", "proof.png")));
        await Flow.Until(async () => (await bench.Service.Client.Get($"/v1/jobs/{answer.Id()}"))["deliveries"].GetProperty("delivered").GetInt32() == 1, "the answer is noted");
        (await bench.Service.Look(db => db.Events.CountAsync())).ShouldBe(1);
        var drop = await bench.Service.Look(db => db.Drops.SingleAsync());
        (drop.State, drop.Step, drop.Job).ShouldBe((DropState.Answered, "kept", answer.Id()));
    }

    [Fact]
    public async Task A_design_that_must_not_be_sewn_comes_back_without_a_tape()
    {
        await using var bench = await FolderBench.Start();
        bench.PutPair("tall", Upload.Ticket("HF-3"), TooTall);

        var folder = (await bench.Answers()).Single();

        FolderBench.Read(folder, "answer.json").Text("verdict").ShouldStartWith("returnTo");
        FolderBench.Names(folder).ShouldBe(["answer.json", "card.pdf", "proof.png", "proof.svg", "result.json"]);
    }

    [Fact]
    public async Task A_file_that_still_grows_is_left_alone()
    {
        await using var bench = await FolderBench.Start();
        bench.Put("slow.json", Upload.Ticket("HF-4"));
        for (var part = 1; part <= 4; part++)
        {
            bench.Put("slow.dst", Upload.Tape[..(Upload.Tape.Length * part / 4)]);
            await bench.Round();
            FolderBench.Names(bench.Places.Drop).ShouldBe(["slow.dst", "slow.json"], $"part {part}");
            bench.Clock.Advance(TimeSpan.FromSeconds(3));
        }

        await bench.Round();
        FolderBench.Names(bench.Places.Drop).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_file_that_was_written_to_without_growing_is_left_alone()
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutPair("touched", Upload.Ticket("HF-5"), Upload.Tape);
        await bench.Round();
        File.SetLastWriteTimeUtc(Path.Combine(bench.Places.Drop, "touched.dst"), new DateTime(2026, 11, 25, 7, 0, 0, DateTimeKind.Utc));
        bench.Clock.Advance(TimeSpan.FromSeconds(3));

        await bench.Round();

        FolderBench.Names(bench.Places.Drop).ShouldBe(["touched.dst", "touched.json"]);
        bench.Status().GetProperty("waiting")[0].Text("for").ShouldContain("writer");
    }

    [Theory]
    [InlineData("CREST.DST", "crest.Json")]
    [InlineData("Crest.dst", "cresT.JSON")]
    public async Task Letters_case_does_not_part_a_pair(string tape, string ticket)
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.Put(tape, Upload.Tape);
        bench.Put(ticket, Upload.Ticket("HF-6"));

        await bench.Settle();

        (await bench.Service.Look(db => db.Jobs.SingleAsync())).FileName.ShouldBe(tape);
        FolderBench.Names(FolderBench.Folders(bench.Places.Taken).Single()).ShouldBe(new[] { tape, ticket }.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("lions-front.dst", "ticket.json")]
    [InlineData("order 7/lions-front.DST", "order 7/lions-front.json")]
    public async Task An_archive_with_one_of_each_is_a_pair(string tape, string ticket)
    {
        await using var bench = await FolderBench.Start();
        bench.PutArchive("lions.zip", (tape, Upload.Tape), (ticket, Encoding.UTF8.GetBytes(Upload.Ticket("HF-7"))), ("__MACOSX/._lions-front.dst", [1, 2]), (".hidden", [3]));

        var folder = (await bench.Answers()).Single();

        Path.GetFileName(folder).ShouldBe("lions.1");
        FolderBench.Read(folder, "answer.json").Text("fileName").ShouldBe(Path.GetFileName(tape));
        FolderBench.Names(Path.Combine(bench.Places.Kept, "2026-11-25", "lions.1")).ShouldBe(["lions.zip"]);
    }

    [Fact]
    public async Task Hidden_and_unfinished_files_are_nobodys_business()
    {
        await using var bench = await FolderBench.Start();
        string[] names = ["lions.dst.part", ".lions.dst", "lions.dst.filepart", "lions.json~", "lions.json.crdownload", "lions.tmp"];
        foreach (var name in names)
            bench.Put(name, "x");
        await bench.Settle();
        bench.Clock.Advance(TimeSpan.FromHours(1));

        await bench.Round();

        FolderBench.Names(bench.Places.Drop).ShouldBe(names.Order(StringComparer.Ordinal));
        bench.Status().GetProperty("waiting").GetArrayLength().ShouldBe(0);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task The_same_pair_within_a_day_is_answered_from_the_job_there_is(Store store)
    {
        await using var bench = await FolderBench.Start(store);
        bench.PutPair("first", Upload.Ticket("HF-8"), Upload.Tape);
        var first = FolderBench.Read((await bench.Answers()).Single(), "answer.json");
        bench.PutPair("first", Upload.Ticket("HF-8"), Upload.Tape);
        bench.PutArchive("again.zip", ("a.dst", Upload.Tape), ("a.json", Encoding.UTF8.GetBytes(Upload.Ticket("HF-8"))));

        var folders = await bench.Answers(3);

        folders.Select(folder => Path.GetFileName(folder)[..7]).ShouldBe(["again.1", "first.1", "first.1"]);
        var again = FolderBench.Read(folders[0], "answer.json");
        again.Text("duplicateOf").ShouldBe(first.GetProperty("drop").Text("id"));
        again.Id().ShouldBe(first.Id());
        again.GetProperty("drop").Text("id").ShouldNotBe(first.GetProperty("drop").Text("id"));
        FolderBench.Names(folders[0]).ShouldContain("1.DST");
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);
        FolderBench.Folders(Path.Combine(bench.Places.Kept, "2026-11-25")).Length.ShouldBe(3);
    }

    [Fact]
    public async Task The_same_pair_after_a_day_is_a_new_revision()
    {
        await using var bench = await FolderBench.Start();
        bench.PutPair("first", Upload.Ticket("HF-9"), Upload.Tape);
        await bench.Answers();
        bench.Clock.Advance(TimeSpan.FromHours(25));
        bench.PutPair("first", Upload.Ticket("HF-9"), Upload.Tape);

        var second = FolderBench.Read((await bench.Answers(2))[1], "answer.json");

        second.GetProperty("revision").GetInt32().ShouldBe(2);
        second.TryGetProperty("duplicateOf", out _).ShouldBeFalse();
    }

    private static string Sha(string path) => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)));
}
