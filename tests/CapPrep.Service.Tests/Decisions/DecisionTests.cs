using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Catalog;
using CapPrep.Service.Tests.HotFolder;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Decisions;

public sealed class DecisionTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_decision_is_stored_shown_audited_and_told_and_leaves_the_job_as_it_was(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var receiver = await Receiver.Start();
        await using var service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Settings = new Dictionary<string, string?> { ["Webhooks:AllowedNetworks"] = "127.0.0.0/8" },
        });
        await service.Client.Call(HttpMethod.Post, "/v1/webhooks", $$"""{"url":"{{receiver.Address}}","types":["job.decided"]}""");
        var job = await service.Work(Upload.Ticket("DD-1", ("echo", new JsonObject { ["row"] = 7 })), Deciding.TooTall);
        var before = await service.Client.GetByteArrayAsync($"/v1/jobs/{job.Id()}/result", Cancel);
        var number = (await service.Result(job.Id())).Number("place.too-tall");

        var answer = await service.Client.Decide(
            job.Id(), $$"""{"decision":"accept","by":"Marta Quist","reason":"Customer wants it so.","findings":[{{number}}]}""");

        answer.Status.ShouldBe(HttpStatusCode.Created);
        answer.Header("Location").ShouldBe($"/v1/jobs/{job.Id()}");
        var accepted = answer["findings"].EnumerateArray().ShouldHaveSingleItem();
        accepted.Text("rule").ShouldBe("place.too-tall");
        answer["boundTo"].Text("capStyle").ShouldBe("six-panel-structured-mid");
        var shown = (await service.Client.Get($"/v1/jobs/{job.Id()}", Array.Empty<(string, string)>())).Body;
        shown.GetProperty("decisions").EnumerateArray().ShouldHaveSingleItem().GetRawText().ShouldBe(answer.Body.GetRawText());
        shown.Text("verdict").ShouldBe("returnToOrderDesk");
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{job.Id()}/result", Cancel)).ShouldBe(before);
        await receiver.Until(1);
        var told = JsonDocument.Parse(receiver.Calls.ShouldHaveSingleItem().Body).RootElement;
        told.Text("type").ShouldBe("job.decided");
        told.GetProperty("data").Id().ShouldBe(job.Id());
        told.GetProperty("data").GetProperty("echo").GetProperty("row").GetInt32().ShouldBe(7);
        told.GetProperty("data").GetProperty("decision").GetRawText().ShouldBe(answer.Body.GetRawText());
        var audit = await service.Look(db => db.Audit.SingleAsync(row => row.Kind == "decisions", Cancel));
        audit.Target.ShouldBe(answer.Body.Id());
        audit.Action.ShouldBe("add");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task The_same_request_at_once_and_again_is_one_decision(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var job = await service.Work(Upload.Ticket("DD-2"), Deciding.TooTall);

        var answers = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => service.Client.Decide(job.Id(), Deciding.Body("accept"), "twelve")));

        answers.ShouldAllBe(answer => answer.Status == HttpStatusCode.Created);
        answers.Select(answer => answer.Body.GetRawText()).Distinct().Count().ShouldBe(1);
        answers.Count(answer => answer.Header("Idempotency-Replayed") == "true").ShouldBe(11);
        (await service.Client.Decide(job.Id(), Deciding.Body("reject"), "twelve")).Code.ShouldBe("idempotency-key-reused");
        (await service.Client.Post(Upload.Ticket("DD-2"), Upload.Tape, ("Idempotency-Key", "twelve"))).Code.ShouldBe("idempotency-key-reused");
        (await service.Look(db => db.Decisions.Select(row => row.Said).Distinct().CountAsync(Cancel))).ShouldBe(1);
        (await service.Look(db => db.Events.CountAsync(row => row.Type == "job.decided", Cancel))).ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Two_that_decide_at_once_leave_one_word_in_force(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var job = await service.Work(Upload.Ticket("DD-3"), Deciding.TooTall);

        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => service.Client.Decide(job.Id(), Deciding.Body("accept"))));

        var points = await service.Look(db => db.Decisions.ToArrayAsync(Cancel));
        var inForce = points.Where(point => point.Ended is null).ToArray();
        inForce.Select(point => (point.Rule, point.Element)).ShouldBeUnique();
        inForce.Select(point => point.Said).Distinct().Count().ShouldBe(1);
        points.Select(point => point.Said).Distinct().Count().ShouldBe(8);
    }

    [Fact]
    public async Task A_later_word_ends_the_earlier_one()
    {
        await using var service = await ServiceUnderTest.Start();
        var job = await service.Work(Upload.Ticket("DD-4"), Deciding.TooTall);
        var first = await service.Client.Accept(job.Id(), 1);

        var second = await service.Client.Reject(job.Id(), 1);

        second["ends"].GetInt32().ShouldBe(1);
        var decisions = (await service.Client.Get($"/v1/jobs/{job.Id()}", Array.Empty<(string, string)>()))["decisions"].EnumerateArray().ToArray();
        decisions.Select(decision => decision.Id()).ShouldBe([first.Body.Id(), second.Body.Id()]);
        decisions[0].Text("ended").ShouldBe(decisions[1].Text("at"));
        decisions[1].TryGetProperty("ended", out _).ShouldBeFalse();
    }

    [Fact]
    public async Task A_pair_that_is_dropped_again_after_a_decision_is_checked_again()
    {
        await using var bench = await FolderBench.Start(Store.Sqlite);
        bench.PutPair("tall", Upload.Ticket("DD-6"), Deciding.TooTall);
        var first = FolderBench.Read((await bench.Answers()).Single(), "answer.json");
        (await bench.Service.Client.Accept(first.Id())).Status.ShouldBe(HttpStatusCode.Created);
        bench.PutPair("tall", Upload.Ticket("DD-6"), Deciding.TooTall);

        var folder = (await bench.Answers(2)).Single(answer => Path.GetFileName(answer) == "tall.2");

        FolderBench.Names(folder).ShouldContain("2.DST");
        FolderBench.Read(folder, "answer.json").Text("verdict").ShouldBe("sewAsReceived");
    }

    [Theory]
    [InlineData("decision-request-sample")]
    [InlineData("decision-request")]
    public async Task The_example_decisions_can_be_sent(string name)
    {
        await using var service = await ServiceUnderTest.Start();
        var job = await service.Work(Upload.Ticket("DD-7"), Deciding.Sewable);

        var example = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "openapi", "examples", name + ".json"), Cancel);

        (await service.Client.Decide(job.Id(), example)).Status.ShouldBe(HttpStatusCode.Created);
    }

    [Fact]
    public async Task A_key_that_may_not_manage_may_not_decide()
    {
        await using var service = await ServiceUnderTest.Start();
        var job = await service.Work(Upload.Ticket("DD-5"), Deciding.TooTall);
        var client = service.ClientWith(await service.NewKey("main", "submit", "read", "floor"));

        (await client.Accept(job.Id())).Code.ShouldBe("scope-missing");
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
}
