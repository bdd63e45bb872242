using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Decisions;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Revisions;

/// <summary>What the result of a later revision says of the one before.</summary>
public sealed class RevisionResultTests
{
    private const string TooTall = "place.too-tall";

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_mended_tape_says_what_is_solved_and_what_else_is_different(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var first = await service.Work(Upload.Ticket("RV-1"), Deciding.TooTall);
        (await service.Result(first.Id())).TryGetProperty("revision", out _).ShouldBeFalse();

        var second = await service.Work(Upload.Ticket("RV-1"), TapeBuilder.Seated(400, 500, blocks: 2).ToBytes("MENDED"));

        var revision = (await service.Result(second.Id())).GetProperty("revision");
        revision.Text("of").ShouldBe(first.Id());
        second.GetProperty("inputs").Text("earlier").ShouldBe(first.Id());
        revision.GetProperty("sameStitches").GetBoolean().ShouldBeFalse();
        revision.Rules("solved").ShouldContain(TooTall);
        revision.Rules("stillOpen").ShouldNotContain(TooTall);
        revision.Rules("newFindings").ShouldNotContain(TooTall);
        revision.GetProperty("changedOutsideTheBrief").EnumerateArray().Select(change => change.Text("what")).ShouldBe(["colors"]);
    }

    [Fact]
    public async Task The_same_tape_again_leaves_everything_open_and_nothing_changed()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("RV-2"), Deciding.TooTall);

        var second = await service.Work(Upload.Ticket("RV-2"), Deciding.TooTall);

        var (before, result) = (await service.Result(first.Id()), await service.Result(second.Id()));
        var revision = result.GetProperty("revision");
        revision.GetProperty("sameStitches").GetBoolean().ShouldBeTrue();
        foreach (var none in new[] { "solved", "newFindings", "changedOutsideTheBrief" })
            revision.GetProperty(none).GetArrayLength().ShouldBe(0, none);
        revision.Rules("stillOpen").ShouldBe(before.GetProperty("findings").EnumerateArray()
            .Where(finding => finding.Text("state") == "open" && finding.Text("severity") != "note").Select(finding => finding.Text("rule")));
    }

    [Fact]
    public async Task What_a_person_accepted_is_neither_solved_nor_open()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("RV-3"), Deciding.TooTall);
        await service.Client.Accept(first.Id());

        var second = await service.Result((await service.Work(Upload.Ticket("RV-3"), Deciding.TooTall)).Id());

        second.Rules("accepted").ShouldContain(TooTall);
        second.GetProperty("revision").GetProperty("solved").GetArrayLength().ShouldBe(0);
        second.GetProperty("revision").GetProperty("stillOpen").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task A_new_seating_or_cap_does_not_make_old_points_new()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Work(Upload.Ticket("RV-4", ("seating", new JsonObject { ["baseAboveBrimMm"] = 9 })), Deciding.TooTall);

        var higher = await service.Result((await service.Work(Upload.Ticket("RV-4", ("seating", new JsonObject { ["baseAboveBrimMm"] = 20 })), Deciding.TooTall)).Id());

        var revision = higher.GetProperty("revision");
        revision.Rules("stillOpen").ShouldContain(TooTall);
        revision.Rules("solved").ShouldContain("place.brim-clearance");
    }

    [Fact]
    public async Task Another_line_of_the_order_is_no_revision()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Work(Upload.Ticket("RV-5"), Deciding.TooTall);

        var other = await service.Result((await service.Work(Upload.Ticket("RV-5", ("line", "2")), Deciding.TooTall)).Id());

        other.TryGetProperty("revision", out _).ShouldBeFalse();
    }

    [Fact]
    public async Task An_erased_job_is_not_compared_with()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("RV-6"), Deciding.TooTall);
        var second = await service.Work(Upload.Ticket("RV-6"), Deciding.TooTall);
        (await service.Client.DeleteAsync($"/v1/jobs/{second.Id()}", TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();

        var third = await service.Result((await service.Work(Upload.Ticket("RV-6"), Deciding.TooTall)).Id());

        third.GetProperty("revision").Text("of").ShouldBe(first.Id());
    }
}
