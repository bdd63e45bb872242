using System.IO.Compression;
using System.Text;
using CapPrep.Service.HotFolder;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CsCheck;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class HostileTests
{
    private static readonly byte[] Ticket = Encoding.UTF8.GetBytes(Upload.Ticket("HX-1"));

    public static TheoryData<string> Names =>
    [
        "two\nlines", "bell\atab\t", "\u202Etsd.snoil", "a..", "con", "..a..", "-rf", "$(reboot)", "'; DROP TABLE jobs; --",
        "%2e%2e%2f", "\\\\host\\share", "emoji 🧢 cap", "e\u0301", new string('n', 250), string.Concat(Enumerable.Repeat("ü", 125)), " spaces ", "a.dst", "~", "\u00A0",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_pair_of_any_name_is_answered_under_a_safe_one(string name)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "This system does not let such names be.");
        await using var bench = await FolderBench.Start();
        if (name.StartsWith('.'))
            name = "x" + name;
        bench.PutPair(name, Upload.Ticket("HX-2"), Upload.Tape);

        var folder = (await bench.Answers()).Single();

        Path.GetFileName(folder).ShouldMatch("^[A-Za-z0-9_-][A-Za-z0-9._-]{0,39}\\.1$");
        FolderBench.Read(folder, "answer.json").GetProperty("drop").Text("name").ShouldBe(name);
        FolderBench.Names(bench.Places.Root).ShouldBe(["answers", "drop", "folder-status.json", "kept", "returned", "taken"]);
    }

    [Fact]
    public void A_safe_name_is_safe_whatever_it_is_made_of() => Gen.String.Sample(name =>
    {
        SafeName.Of(name).ShouldMatch("^[A-Za-z0-9_-][A-Za-z0-9._-]{0,39}$");
        SafeName.Shown(name).ShouldNotContain(letter => char.IsControl(letter));
    });

    [Theory]
    [InlineData("../../lions.dst")]
    [InlineData("/etc/lions.dst")]
    [InlineData("a\\..\\lions.dst")]
    [InlineData("C:lions.dst")]
    public Task An_archive_that_points_outside_comes_back(string entry) =>
        ComesBack([(entry, Upload.Tape), ("lions.json", Ticket)], "archive-invalid");

    [Fact]
    public Task An_archive_without_a_ticket_comes_back() => ComesBack([("lions.dst", Upload.Tape)], "archive-invalid");

    [Fact]
    public Task An_archive_with_two_tapes_comes_back() =>
        ComesBack([("lions.dst", Upload.Tape), ("sub/lions.dst", Upload.Tape), ("lions.json", Ticket)], "archive-invalid");

    [Fact]
    public Task An_archive_with_something_else_in_it_comes_back() =>
        ComesBack([("lions.dst", Upload.Tape), ("lions.json", Ticket), ("run.exe", [1])], "archive-invalid");

    [Fact]
    public Task An_archive_with_many_entries_comes_back() =>
        ComesBack([.. Enumerable.Range(0, 201).Select(i => ($"lions{i}.dst", new byte[] { 1 }))], "archive-invalid");

    /// <summary>64 MiB of nothing, packed a thousand to one.</summary>
    [Fact]
    public Task A_bomb_is_not_unpacked_further_than_a_tape_may_be_long() =>
        ComesBack([("lions.dst", new byte[64 * 1024 * 1024]), ("lions.json", Ticket)], "tape-too-large");

    [Fact]
    public Task A_bomb_of_a_ticket_is_not_unpacked_either() =>
        ComesBack([("lions.dst", Upload.Tape), ("lions.json", new byte[64 * 1024 * 1024])], "ticket-too-large");

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(60)]
    public async Task A_damaged_archive_comes_back(int cut)
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutArchive("lions.zip", ("lions.dst", Upload.Tape), ("lions.json", Ticket));
        var path = Path.Combine(bench.Places.Drop, "lions.zip");
        var bytes = await File.ReadAllBytesAsync(path, FolderBench.Cancel);
        bench.Put("lions.zip", cut == 0 ? "PK, but no archive"u8.ToArray() : bytes[..^cut]);

        var reason = FolderBench.Read(await bench.Returned(), "reason.json");

        reason.GetProperty("violations")[0].Text("code").ShouldBe("archive-invalid");
    }

    [Fact]
    public void An_archive_with_any_byte_changed_is_read_or_refused()
    {
        var archive = Packed();
        var uploads = new CapPrep.Service.Plumbing.UploadSettings(1_048_576, 200_000, 65_536);
        Gen.Select(Gen.Int[0, archive.Length - 1], Gen.Byte).Sample((at, value) =>
        {
            byte[] changed = [.. archive];
            changed[at] = value;
            var (contents, refusal) = Archive.Read(changed, uploads);
            (contents is null).ShouldBe(refusal is not null);
        });
    }

    private static byte[] Packed()
    {
        using var buffer = new MemoryStream();
        using (var archive = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in new[] { ("lions.dst", Upload.Tape), ("lions.json", Ticket) })
            {
                using var entry = archive.CreateEntry(name).Open();
                entry.Write(bytes);
            }
        }

        return buffer.ToArray();
    }

    private static async Task ComesBack((string Entry, byte[] Content)[] entries, string code)
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutArchive("lions.zip", entries);

        var folder = await bench.Returned();

        var reason = FolderBench.Read(folder, "reason.json");
        var found = reason.TryGetProperty("violations", out var violations) ? violations[0].Text("code") : reason.Text("code");
        found.ShouldBe(code, reason.ToString());
        FolderBench.Names(folder).ShouldBe(["lions.zip", "reason.json", "reason.txt"]);
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(0);
    }
}
