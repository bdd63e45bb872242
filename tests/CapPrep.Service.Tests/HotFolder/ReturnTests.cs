using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.HotFolder;

public sealed class ReturnTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_refused_pair_comes_back_with_the_same_problem_that_a_request_gets(Store store)
    {
        await using var bench = await FolderBench.Start(store, works: false);
        var wrong = Upload.Ticket("HR-1", ("capStyle", "six-panel"), ("quantity", 0));
        bench.PutPair("lions-front", wrong, Upload.Tape);
        var asked = (await bench.Service.Client.Post(wrong, Upload.Tape)).Body;

        var folder = await bench.Returned();

        Path.GetFileName(folder).ShouldMatch("^lions-front\\.[0-9a-f]{12}$");
        FolderBench.Names(folder).ShouldBe(["lions-front.dst", "lions-front.json", "reason.json", "reason.txt"]);
        var given = JsonNode.Parse(asked.GetRawText())!.AsObject();
        given.Remove("instance");
        given.Remove("traceId");
        FolderBench.Read(folder, "reason.json").GetRawText().ShouldBe(JsonSerializer.Serialize(given, Json.Written));
        var text = await File.ReadAllTextAsync(Path.Combine(folder, "reason.txt"), FolderBench.Cancel);
        text.ShouldContain("In the ticket, capStyle: There is no cap style 'six-panel'.");
        text.ShouldContain("six-panel-structured-mid");
        text.ShouldContain("In the ticket, quantity:");
        text.ShouldContain("Correct the ticket");
        text.ShouldContain($"lions-front.dst, {Upload.Tape.Length} bytes");
        FolderBench.Names(bench.Places.Taken).ShouldBeEmpty();
        (await bench.Service.Look(db => db.Jobs.CountAsync())).ShouldBe(0);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_returned_drop_is_told_as_an_event_once(Store store)
    {
        await using var bench = await FolderBench.Start(store, works: false);
        bench.PutPair("lions-front", Upload.Ticket("HR-2", ("quantity", 0)), Upload.Tape);
        var folder = await bench.Returned();
        await bench.Round();

        var told = (await bench.Service.Client.Get("/v1/events"))["items"].EnumerateArray().Single();

        told.Text("type").ShouldBe("drop.returned");
        var data = told.GetProperty("data");
        data.Text("name").ShouldBe("lions-front");
        data.Text("orderNumber").ShouldBe("HR-2");
        data.Text("folderPath").ShouldBe("returned/" + Path.GetFileName(folder));
        data.Text("folder").ShouldBe(Path.GetFileName(bench.Places.Root));
        data.GetProperty("files").GetArrayLength().ShouldBe(2);
        data.GetProperty("problem").GetRawText().ShouldBe(FolderBench.Read(folder, "reason.json").GetRawText());
    }

    [Fact]
    public async Task A_job_that_fails_gives_its_pair_back_and_says_whose_fault_it_is()
    {
        await using var bench = await FolderBench.Start(adjust: services => services.AddSingleton<IPaperMaker, TornPaper>());
        bench.PutPair("lions", Upload.Ticket("HR-3"), Upload.Tape);
        await bench.Settle();
        await Flow.Until(
            async () =>
            {
                bench.Clock.Advance(TimeSpan.FromSeconds(5));
                await bench.Round();
                return FolderBench.Folders(bench.Places.Returned).Length == 1;
            },
            "the pair comes back");

        var folder = FolderBench.Folders(bench.Places.Returned).Single();
        FolderBench.Read(folder, "reason.json").Text("code").ShouldBe("job-failed");
        (await File.ReadAllTextAsync(Path.Combine(folder, "reason.txt"), FolderBench.Cancel)).ShouldContain("not your fault");
        FolderBench.Folders(bench.Places.Answers).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("reason")]
    [InlineData("REASON")]
    public async Task Files_that_go_by_the_name_of_the_reason_step_aside(string name)
    {
        await using var bench = await FolderBench.Start(works: false);
        bench.PutPair(name, """{"mine":true}""", Upload.Tape);

        var folder = await bench.Returned();

        FolderBench.Names(folder).ShouldBe(new[] { $"{name}.dst", $"received-{name}.json", "reason.json", "reason.txt" }.Order(StringComparer.Ordinal));
        FolderBench.Read(folder, $"received-{name}.json").GetProperty("mine").GetBoolean().ShouldBeTrue();
        FolderBench.Read(folder, "reason.json").Text("code").ShouldBe("ticket-invalid");
    }

    [Fact]
    public async Task A_tape_or_a_ticket_larger_than_is_read_comes_back()
    {
        await using var bench = await FolderBench.Start(
            works: false, settings: new Dictionary<string, string?> { ["Uploads:MaxTapeBytes"] = "2000", ["Uploads:MaxTicketBytes"] = "300" });
        bench.PutPair("tape", Upload.Ticket("HR-4"), new byte[2001]);
        bench.PutPair("ticket", Upload.Ticket("HR-5", ("design", new string('x', 300))), Upload.Tape[..1500]);

        await bench.Settle();

        FolderBench.Folders(bench.Places.Returned).Select(folder => FolderBench.Read(folder, "reason.json").Text("code"))
            .ShouldBe(["tape-too-large", "ticket-too-large"]);
    }

    [Fact]
    public async Task Many_names_that_are_cut_to_one_come_back_apart()
    {
        await using var bench = await FolderBench.Start(works: false);
        foreach (var letter in "äöüßéè")
            bench.PutPair($"{letter}", Upload.Ticket("HR-6", ("quantity", 0)), Upload.Tape);

        await bench.Settle();

        FolderBench.Folders(bench.Places.Returned).Length.ShouldBe(6);
        FolderBench.Folders(bench.Places.Returned).ShouldAllBe(folder => Path.GetFileName(folder).StartsWith("_."));
    }

    private sealed class TornPaper : IPaperMaker
    {
        public Papers Make(PreparedJob prepared) => throw new InvalidOperationException("The paper is torn.");
    }
}
