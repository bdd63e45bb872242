using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Commands.Demo;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Decisions;

/// <summary>What an approved sample means for later jobs.</summary>
public sealed class ApprovalTests
{
    private static readonly byte[] Original = ClubDesigns.BottomLineLast();

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Stitches_approved_as_received_keep_their_order_whatever_another_would_gain(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var asReceived = new JsonObject { ["mode"] = "asReceived" };
        var first = await service.Work(Upload.Ticket("DS-1", ("sewOrder", asReceived)), Original);
        first.Text("verdict").ShouldBe("sewAsReceived");
        (await service.Work(Upload.Ticket("DS-2"), Original)).Text("verdict").ShouldBe("sewResequenced");
        var decision = await service.Client.Approve(first.Id());

        var repeat = await service.Work(Upload.Ticket("DS-3", ("sewOrder", new JsonObject { ["mode"] = "always" })), Original);

        repeat.Text("verdict").ShouldBe("sewAsReceived");
        var result = await service.Result(repeat.Id());
        var note = $"approved on {decision["at"].GetString()![..10]}, order DS-1";
        result.GetProperty("approved").Text("note").ShouldBe(note);
        result.GetProperty("approved").Text("sewn").ShouldBe("received");
        result.GetProperty("sewOrder").Text("keptBecause").ShouldBe($"These stitches were {note}.");
        result.GetProperty("summary").Text("lead").ShouldStartWith($"Sew as received, {note}. No first cap needed.");
        result.GetProperty("tapeToSew").GetProperty("changes").EnumerateArray().Select(change => change.GetString()).ShouldNotContain("startEnd");
        FirstCap(result).ShouldBe("no");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task When_the_original_comes_again_the_approved_stitches_are_sewn(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var first = await service.Work(Upload.Ticket("DS-4"), Original);
        first.Text("verdict").ShouldBe("sewResequenced");
        var sample = await Sewn(service, first.Id());
        var decision = await service.Client.Approve(first.Id());
        decision["boundTo"].Text("sewnStitchesSha256").ShouldNotBe(decision["boundTo"].Text("receivedStitchesSha256"));

        var repeat = await service.Work(Upload.Ticket("DS-5"), Original);

        repeat.Text("verdict").ShouldBe("sewResequenced");
        var again = await Sewn(service, repeat.Id());
        again.AsSpan(512).SequenceEqual(sample.AsSpan(512)).ShouldBeTrue();
        OtherTapeReader.Read(again).Label.Trim().ShouldBe(repeat.GetProperty("number").GetInt64().ToString());
        var (before, result) = (await service.Result(first.Id()), await service.Result(repeat.Id()));
        result.GetProperty("approved").Text("sewn").ShouldBe("approvedTape");
        result.GetProperty("summary").Text("lead").ShouldStartWith("Sew in the order approved on ");
        FirstCap(before).ShouldBe("required");
        FirstCap(result).ShouldBe("no");
        foreach (var same in new[] { "needlePlan", "seating" })
            result.GetProperty(same).GetRawText().ShouldBe(before.GetProperty(same).GetRawText(), same);
        result.GetProperty("sewOrder").GetProperty("order").GetRawText().ShouldBe(before.GetProperty("sewOrder").GetProperty("order").GetRawText());
        result.Rules("findings").ShouldBe(before.Rules("findings"));
        result.GetProperty("tapeToSew").GetProperty("changes").GetRawText().ShouldBe(before.GetProperty("tapeToSew").GetProperty("changes").GetRawText());
    }

    [Fact]
    public async Task The_sewn_tape_itself_is_approved_too_and_sewn_as_it_comes()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("DS-6"), Original);
        var sample = await Sewn(service, first.Id());
        await service.Client.Approve(first.Id());

        var repeat = await service.Work(Upload.Ticket("DS-7"), sample);

        repeat.Text("verdict").ShouldBe("sewAsReceived");
        var result = await service.Result(repeat.Id());
        result.GetProperty("approved").Text("sewn").ShouldBe("received");
        FirstCap(result).ShouldBe("no");
        (await Sewn(service, repeat.Id())).AsSpan(512).SequenceEqual(sample.AsSpan(512)).ShouldBeTrue();
    }

    [Fact]
    public async Task A_ticket_that_asks_for_the_received_order_gets_it()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Client.Approve((await service.Work(Upload.Ticket("DS-8"), Original)).Id());

        var repeat = await service.Work(Upload.Ticket("DS-9", ("sewOrder", new JsonObject { ["mode"] = "asReceived" })), Original);

        repeat.Text("verdict").ShouldBe("sewAsReceived");
        var result = await service.Result(repeat.Id());
        result.TryGetProperty("approved", out _).ShouldBeFalse();
        FirstCap(result).ShouldBe("required");
    }

    [Fact]
    public async Task On_another_machine_or_after_a_year_a_first_cap_is_advised()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 8, 0, 0, TimeSpan.Zero));
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Clock = clock });
        await service.Client.Approve((await Ended(service, Upload.Ticket("DS-10"))).GetProperty("job").Id());

        var elsewhere = await Ended(service, Upload.Ticket("DS-11", ("machine", "one-head")));
        clock.SetUtcNow(new DateTimeOffset(2027, 3, 1, 8, 0, 0, TimeSpan.Zero));
        var fresh = await Ended(service, Upload.Ticket("DS-12"));
        clock.SetUtcNow(new DateTimeOffset(2027, 3, 1, 8, 0, 1, TimeSpan.Zero));
        var old = await Ended(service, Upload.Ticket("DS-13"));

        FirstCap(elsewhere).ShouldNotBe("no");
        FirstCap(fresh).ShouldBe("no");
        FirstCap(old).ShouldNotBe("no");
        foreach (var result in new[] { elsewhere, old })
        {
            result.GetProperty("firstCap").GetProperty("because").EnumerateArray().Select(reason => reason.GetString())
                .ShouldNotContain("first time these stitches run on this style");
            result.GetProperty("approved").Text("orderNumber").ShouldBe("DS-10");
        }
    }

    [Fact]
    public async Task A_later_sample_takes_the_place_of_an_earlier_one_and_a_rejection_ends_it()
    {
        await using var service = await ServiceUnderTest.Start();
        var resequenced = await service.Work(Upload.Ticket("DS-14"), Original);
        await service.Client.Approve(resequenced.Id());
        var received = await service.Work(Upload.Ticket("DS-15", ("sewOrder", new JsonObject { ["mode"] = "asReceived" })), Original);

        (await service.Client.Approve(received.Id()))["ends"].GetInt32().ShouldBe(1);

        var repeat = await service.Work(Upload.Ticket("DS-16"), Original);
        repeat.Text("verdict").ShouldBe("sewAsReceived");
        await service.Client.Reject(repeat.Id());
        (await service.Work(Upload.Ticket("DS-17"), Original)).Text("verdict").ShouldBe("sewResequenced");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task With_its_job_an_approved_tape_is_erased_for_good(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var first = await service.Work(Upload.Ticket("DS-18"), Original);
        await service.Client.Approve(first.Id());
        var sha = await service.Look(db => db.JobDocuments.Where(link => link.Kind == "tape.approved").Select(link => link.Sha256).SingleAsync(Cancel));

        (await service.Client.DeleteAsync($"/v1/jobs/{first.Id()}", Cancel)).EnsureSuccessStatusCode();

        (await service.Look(db => db.Documents.AnyAsync(document => document.Sha256 == sha, Cancel))).ShouldBeFalse();
        var next = await service.Result((await service.Work(Upload.Ticket("DS-19"), Original)).Id());
        next.TryGetProperty("approved", out _).ShouldBeFalse();
    }

    [Fact]
    public async Task A_design_that_holds_is_returned_even_when_a_sample_was_approved()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Client.Approve((await service.Work(Upload.Ticket("DS-20"), Original)).Id());

        var wrong = await service.Work(Upload.Ticket("DS-21", ("expectedSize", new JsonObject { ["widthMm"] = 20, ["heightMm"] = 20 })), Original);

        wrong.Text("verdict").ShouldBe("returnToOrderDesk");
    }

    private static string FirstCap(JsonElement result) => result.GetProperty("firstCap").Text("is");

    private static Task<byte[]> Sewn(ServiceUnderTest service, string id) => service.Client.GetByteArrayAsync($"/v1/jobs/{id}/tape", Cancel);

    /// <summary>Result of a job under a clock that stands: nobody can wait by it.</summary>
    private static async Task<JsonElement> Ended(ServiceUnderTest service, string ticket)
    {
        var id = (await service.Client.Post(ticket, Original)).Body.Id();
        await Flow.Until(async () => (await service.Client.Get($"/v1/jobs/{id}", Array.Empty<(string, string)>()))["status"].GetString() == "finished", "the job ends");
        return await service.Result(id);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
}
