using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class HalfTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    [Theory]
    [InlineData(Store.Sqlite, "lions.DST", "its ticket lions.json", "ticket-missing")]
    [InlineData(Store.Postgres, "lions.DST", "its ticket lions.json", "ticket-missing")]
    [InlineData(Store.Sqlite, "lions.json", "its tape lions.dst", "tape-missing")]
    [InlineData(Store.Sqlite, "lions.txt", "nothing; only .dst, .json and .zip are taken here", "tape-missing")]
    public async Task Half_a_pair_waits_for_the_other_half_and_is_returned_when_the_patience_ends(Store store, string name, string waitsFor, string code)
    {
        await using var bench = await FolderBench.Start(store, works: false);
        bench.Put(name, "{}");
        await bench.Settle();
        var since = bench.Clock.GetUtcNow() - TimeSpan.FromSeconds(3);

        var waiting = bench.Status().GetProperty("waiting").EnumerateArray().Single();
        waiting.Text("name").ShouldBe(name);
        waiting.Text("for").ShouldBe(waitsFor);
        waiting.GetProperty("since").GetDateTimeOffset().ShouldBe(since);
        waiting.GetProperty("returnedAt").GetDateTimeOffset().ShouldBe(since + Patience);
        bench.Clock.Advance(Patience - TimeSpan.FromSeconds(4));
        await bench.Round();
        FolderBench.Folders(bench.Places.Returned).ShouldBeEmpty();
        bench.Clock.Advance(TimeSpan.FromSeconds(1));
        await bench.Round();

        var folder = FolderBench.Folders(bench.Places.Returned).Single();
        FolderBench.Names(folder).ShouldBe(new[] { name, "reason.json", "reason.txt" }.Order(StringComparer.Ordinal));
        var reason = FolderBench.Read(folder, "reason.json");
        reason.Text("code").ShouldBe("drop-invalid");
        reason.GetProperty("violations")[0].Text("code").ShouldBe(code);
        FolderBench.Names(bench.Places.Drop).ShouldBeEmpty();
        bench.Status().GetProperty("returnedToday").GetInt32().ShouldBe(1);
    }

    [Theory]
    [InlineData("lions.dst", "lions.json")]
    [InlineData("lions.json", "lions.dst")]
    public async Task The_other_half_may_come_late(string first, string second)
    {
        await using var bench = await FolderBench.Start(works: false);
        Put(first);
        await bench.Settle();
        bench.Clock.Advance(TimeSpan.FromMinutes(9));
        await bench.Round();
        Put(second);
        await bench.Round();

        await bench.Settle();

        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);

        void Put(string name) => bench.Put(name, name.EndsWith(".dst", StringComparison.Ordinal) ? Upload.Tape : System.Text.Encoding.UTF8.GetBytes(Upload.Ticket("HH-1")));
    }

    [Fact]
    public async Task An_empty_half_is_waited_for_and_then_refused_for_what_it_is()
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutPair("lions", Upload.Ticket("HH-2"), []);
        await bench.Settle();
        bench.Status().GetProperty("waiting").EnumerateArray().Select(file => file.Text("for"))
            .ShouldBe(["its content; it is empty", "its other half, which is empty"]);
        bench.Clock.Advance(Patience);

        var reason = FolderBench.Read(await bench.Returned(), "reason.json");

        reason.GetProperty("violations")[0].Text("code").ShouldBe("tape-empty");
    }

    [Fact]
    public async Task Two_tapes_of_one_name_are_returned_together()
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.Put("lions.dst", Upload.Tape);
        bench.Put("LIONS.DST", Upload.OtherTape);
        bench.Put("lions.json", Upload.Ticket("HH-3"));

        var folder = await bench.Returned();

        FolderBench.Names(folder).ShouldBe(["LIONS.DST", "lions.dst", "lions.json", "reason.json", "reason.txt"]);
        FolderBench.Read(folder, "reason.json").GetProperty("violations")[0].Text("code").ShouldBe("twin-names");
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(0);
    }

    [Fact]
    public async Task A_link_is_neither_followed_nor_moved_and_its_other_half_comes_back()
    {
        await using var bench = await FolderBench.Start(works: false);
        var secret = Path.Combine(bench.Service.DataFolder, "outside.dst");
        await File.WriteAllBytesAsync(secret, Upload.Tape, FolderBench.Cancel);
        var link = Path.Combine(bench.Places.Drop, "lions.dst");
        File.CreateSymbolicLink(link, secret);
        bench.Put("lions.json", Upload.Ticket("HH-4"));

        var folder = await bench.Returned();

        FolderBench.Names(folder).ShouldBe(["lions.json", "reason.json", "reason.txt"]);
        FolderBench.Read(folder, "reason.json").GetProperty("violations")[0].Text("code").ShouldBe("not-a-plain-file");
        new FileInfo(link).LinkTarget.ShouldBe(secret);
        File.Exists(secret).ShouldBeTrue();
        bench.Status().GetProperty("trouble").EnumerateArray().Single().GetString()!.ShouldContain("lions.dst");
    }

    [Fact]
    public async Task A_folder_is_left_alone_and_named()
    {
        await using var bench = await FolderBench.Start(works: false);
        Directory.CreateDirectory(Path.Combine(bench.Places.Drop, "lions.dst"));
        bench.Put(Path.Combine("lions.dst", "inner.json"), "{}");
        await bench.Settle();
        bench.Clock.Advance(TimeSpan.FromHours(1));

        await bench.Round();

        FolderBench.Names(bench.Places.Drop).ShouldBe(["lions.dst"]);
        bench.Status().GetProperty("trouble").EnumerateArray().Single().GetString()!.ShouldContain("a folder");
    }
}
