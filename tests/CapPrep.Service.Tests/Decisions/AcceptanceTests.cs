using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Decisions;

/// <summary>What an accepted finding means for later jobs.</summary>
public sealed class AcceptanceTests
{
    private const string TooTall = "place.too-tall";

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task What_was_accepted_counts_for_nothing_on_the_next_job_of_the_same_stitches(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var first = await service.Work(Upload.Ticket("DA-1"), Deciding.TooTall);
        first.Text("verdict").ShouldBe("returnToOrderDesk");
        var decision = await service.Client.Accept(first.Id());

        var next = await service.Work(Upload.Ticket("DA-2"), Relabeled(Deciding.TooTall));

        next.Text("verdict").ShouldBe("sewAsReceived");
        next.GetProperty("verdictReasons").GetArrayLength().ShouldBe(0);
        next.GetProperty("actors").EnumerateArray().Select(actor => actor.GetString()).ShouldBe(["framingStation", "operator"]);
        next.GetProperty("findings").GetProperty("hold").GetInt32().ShouldBe(0);
        next.GetProperty("inputs").GetProperty("decisions").EnumerateArray().ShouldHaveSingleItem().GetString().ShouldBe(decision.Body.Id());
        var result = await service.Result(next.Id());
        result.Rules("findings").ShouldNotContain(TooTall);
        var accepted = result.GetProperty("accepted").EnumerateArray().First(one => one.Text("rule") == TooTall);
        accepted.Text("by").ShouldBe("Marta Quist");
        accepted.Text("at").ShouldBe(decision["at"].GetString());
        accepted.Text("decision").ShouldBe(decision.Body.Id());
        accepted.Text("severity").ShouldBe("hold");
        result.GetProperty("summary").Text("lead").ShouldStartWith("Sew as received.");
        result.GetProperty("firstCap").GetProperty("because").EnumerateArray().Select(reason => reason.GetString()).ShouldBe(["first time these stitches run on this style"]);
        (await service.Client.GetByteArrayAsync(next.GetProperty("links").Text("tape"), Cancel)).Length.ShouldBeGreaterThan(512);
    }

    [Fact]
    public async Task Only_what_was_named_is_accepted()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("DA-3"), Deciding.TooTall);
        var before = await service.Result(first.Id());
        await service.Client.Accept(first.Id(), before.Number(TooTall));

        var next = await service.Result((await service.Work(Upload.Ticket("DA-4"), Deciding.TooTall)).Id());

        next.Rules("accepted").Distinct().ShouldBe([TooTall]);
        next.Rules("findings").ShouldBe(before.Rules("findings").Where(rule => rule != TooTall));
        next.GetProperty("accepted")[0].GetProperty("number").GetInt32().ShouldBe(next.GetProperty("findings").GetArrayLength() + 1);
    }

    [Fact]
    public async Task Other_stitches_another_style_location_or_technique_are_another_matter()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Client.Accept((await service.Work(Upload.Ticket("DA-5"), Deciding.TooTall)).Id());
        (string Ticket, byte[] Tape)[] others =
        [
            (Upload.Ticket("DA-6"), TapeBuilder.Seated(402, 650).ToBytes("TALL")),
            (Upload.Ticket("DA-7", ("capStyle", "six-panel-structured-low")), Deciding.TooTall),
            (Upload.Ticket("DA-8", ("location", "frontLeft")), Deciding.TooTall),
            (Upload.Ticket("DA-9", ("technique", "patch")), Deciding.TooTall),
        ];

        foreach (var (ticket, tape) in others)
            (await service.Result((await service.Work(ticket, tape)).Id())).GetProperty("accepted").GetArrayLength().ShouldBe(0, ticket);
    }

    [Fact]
    public async Task A_changed_limit_ends_it()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Client.Accept((await service.Work(Upload.Ticket("DA-10"), Deciding.TooTall)).Id());
        (await service.Client.Create("/v1/rule-books/strict", """{"id":"strict","name":"Strict","basedOn":"house","rules":{"place.too-tall":{"limits":{"hold":64}}}}""")).Status.ShouldBe(System.Net.HttpStatusCode.Created);
        (await service.Client.Create("/v1/rule-books/calm", """{"id":"calm","name":"Calm","basedOn":"house","rules":{"order.bottom-up":{"limits":{"warn":0.4}}}}""")).Status.ShouldBe(System.Net.HttpStatusCode.Created);

        var strict = await service.Result((await service.Work(Upload.Ticket("DA-11", ("ruleBook", "strict")), Deciding.TooTall)).Id());
        var calm = await service.Result((await service.Work(Upload.Ticket("DA-12", ("ruleBook", "calm")), Deciding.TooTall)).Id());

        strict.Rules("accepted").ShouldNotContain(TooTall);
        strict.Rules("findings").ShouldContain(TooTall);
        calm.Rules("accepted").ShouldContain(TooTall);
    }

    [Fact]
    public async Task Something_worse_than_what_was_seen_is_new()
    {
        await using var service = await ServiceUnderTest.Start();
        var low = new JsonObject { ["baseAboveBrimMm"] = 9.5 };
        var first = await service.Work(Upload.Ticket("DA-13", ("seating", low.DeepClone())), Upload.Tape);
        var clearance = (await service.Result(first.Id())).Number("place.brim-clearance");
        await service.Client.Accept(first.Id(), clearance);

        var same = await service.Result((await service.Work(Upload.Ticket("DA-14", ("seating", low.DeepClone())), Upload.Tape)).Id());
        var lower = await service.Result((await service.Work(Upload.Ticket("DA-15", ("seating", new JsonObject { ["baseAboveBrimMm"] = 9.2 })), Upload.Tape)).Id());

        same.Rules("accepted").ShouldContain("place.brim-clearance");
        lower.Rules("accepted").ShouldNotContain("place.brim-clearance");
        lower.Rules("findings").ShouldContain("place.brim-clearance");
    }

    [Fact]
    public async Task A_rejection_ends_it_by_the_number_of_the_later_job_or_as_a_whole()
    {
        await using var service = await ServiceUnderTest.Start();
        await service.Client.Accept((await service.Work(Upload.Ticket("DA-16"), Deciding.TooTall)).Id());
        var second = await service.Work(Upload.Ticket("DA-17"), Deciding.TooTall);
        var result = await service.Result(second.Id());
        var accepted = result.GetProperty("accepted").EnumerateArray().First(one => one.Text("rule") == TooTall).GetProperty("number").GetInt32();
        (await service.Client.Accept(second.Id(), accepted)).Faults.ShouldBe(["/findings/0 contradicts"]);

        (await service.Client.Reject(second.Id(), accepted))["ends"].GetInt32().ShouldBe(1);

        var third = await service.Work(Upload.Ticket("DA-18"), Deciding.TooTall);
        var left = await service.Result(third.Id());
        left.Rules("findings").ShouldContain(TooTall);
        left.Rules("accepted").ShouldBe(result.Rules("accepted").Where(rule => rule != TooTall));
        await service.Client.Reject(third.Id());
        (await service.Result((await service.Work(Upload.Ticket("DA-19"), Deciding.TooTall)).Id())).GetProperty("accepted").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task What_hangs_on_the_order_or_may_strike_the_frame_is_accepted_for_the_next_check_only()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("DA-20", ("blanks", 40)), Deciding.OutOfField);
        string[] once = ["place.outside-field", "ticket.quantity", "ticket.threads"];
        (await service.Result(first.Id())).Rules("findings").Intersect(once).Count().ShouldBe(3);
        var decision = await service.Client.Accept(first.Id());
        decision["findings"].EnumerateArray().Where(finding => finding.TryGetProperty("oneJob", out _)).Select(finding => finding.Text("rule")).Order().ShouldBe(once);

        var elsewhere = await service.Result((await service.Work(Upload.Ticket("DA-21", ("blanks", 40)), Deciding.OutOfField)).Id());
        var next = await service.Result((await service.Work(Upload.Ticket("DA-20", ("blanks", 40)), Deciding.OutOfField)).Id());
        var later = await service.Result((await service.Work(Upload.Ticket("DA-20", ("blanks", 40)), Deciding.OutOfField)).Id());

        elsewhere.Rules("findings").Intersect(once).Count().ShouldBe(3);
        elsewhere.Rules("accepted").ShouldContain(TooTall);
        next.Rules("accepted").Intersect(once).Count().ShouldBe(3);
        next.Text("verdict").ShouldBe("sewAsReceived");
        later.Rules("findings").Intersect(once).Count().ShouldBe(3);
        later.Text("verdict").ShouldBe("returnToOrderDesk");
    }

    [Fact]
    public async Task A_job_knows_what_was_decided_when_it_was_accepted_and_nothing_later()
    {
        await using var service = await ServiceUnderTest.Start();
        var first = await service.Work(Upload.Ticket("DA-22"), Deciding.TooTall);
        var before = await service.Client.GetByteArrayAsync($"/v1/jobs/{first.Id()}/result", Cancel);
        await service.Client.Accept(first.Id());
        var bound = await service.Work(Upload.Ticket("DA-23"), Deciding.TooTall);

        await service.Client.Reject(first.Id());

        var row = await service.Look(db => db.Jobs.SingleAsync(job => job.OrderNumber == "DA-23", Cancel));
        JsonDocument.Parse(row.Bound!).RootElement.Rules("accepted").ShouldContain(TooTall);
        (await service.Look(db => db.Jobs.SingleAsync(job => job.OrderNumber == "DA-22", Cancel))).Bound.ShouldBeNull();
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{first.Id()}/result", Cancel)).ShouldBe(before);
        (await service.Result(bound.Id())).Rules("accepted").ShouldContain(TooTall);
    }

    [Fact]
    public async Task Decisions_of_another_shop_do_not_count()
    {
        await using var service = await ServiceUnderTest.Start();
        var stranger = service.ClientWith(await service.NewKey("harbor", [.. CapPrep.Service.Access.Scopes.All]));
        var theirs = await stranger.Post(Upload.Ticket("DA-24"), Deciding.TooTall, ("Prefer", "wait=20"));
        (await stranger.Accept(theirs.Body.Id())).Status.ShouldBe(System.Net.HttpStatusCode.Created);

        var ours = await service.Work(Upload.Ticket("DA-24"), Deciding.TooTall);

        ours.Text("verdict").ShouldBe("returnToOrderDesk");
    }

    /// <summary>The same stitches under another name.</summary>
    private static byte[] Relabeled(byte[] tape)
    {
        var bytes = tape.ToArray();
        "OTHER"u8.CopyTo(bytes.AsSpan(3));
        return bytes;
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
}
