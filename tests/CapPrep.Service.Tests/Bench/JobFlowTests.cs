using System.Security.Cryptography;
using System.Text;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class JobFlowTests
{
    private static readonly byte[] TooTall = TapeBuilder.Seated(400, 900).ToBytes("TALL");

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_posted_design_comes_back_with_verdict_documents_and_event(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });

        var job = await service.WorkCrest("QB-1", ("echo", new System.Text.Json.Nodes.JsonObject { ["row"] = 7 }));

        job.Text("status").ShouldBe("finished");
        job.Text("verdict").ShouldBe("sewAsReceived");
        job.GetProperty("echo").GetProperty("row").GetInt32().ShouldBe(7);
        var links = job.GetProperty("links");
        var result = await service.Client.Get(links.Text("result"));
        result["verdict"].GetString().ShouldBe("sewAsReceived");
        result["job"].Id().ShouldBe(job.Id());
        result["ticket"].Text("capStyle").ShouldBe("six-panel-structured-mid");
        (await service.Client.GetByteArrayAsync(links.Text("card"))).AsSpan(0, 5).ToArray().ShouldBe("%PDF-"u8.ToArray());
        (await service.Client.GetStringAsync(links.Text("proof"))).ShouldContain("<svg");
        var happened = (await service.Client.Get("/v1/events"))["items"].EnumerateArray().ShouldHaveSingleItem();
        happened.Text("type").ShouldBe("job.finished");
        happened.GetProperty("data").Id().ShouldBe(job.Id());
        happened.GetProperty("data").GetProperty("links").GetRawText().ShouldBe(links.GetRawText());
    }

    [Fact]
    public async Task The_tape_to_sew_holds_the_received_stitches_and_carries_the_job_number()
    {
        await using var service = await ServiceUnderTest.Start();

        var job = await service.WorkCrest("QB-2");

        using var response = await service.Client.GetAsync(job.GetProperty("links").Text("tape"));
        var bytes = await response.Content.ReadAsByteArrayAsync();
        response.Content.Headers.ContentDisposition!.DispositionType.ShouldBe("attachment");
        response.Content.Headers.ContentDisposition.FileName!.Trim('"').ShouldBe($"{job.GetProperty("number").GetInt64()}.DST");
        Sha(bytes).ShouldBe(job.GetProperty("tapeToSew").Text("sha256"));
        var (sewn, received) = (OtherTapeReader.Read(bytes), OtherTapeReader.Read(Upload.Tape));
        sewn.Label.Trim().ShouldBe(job.GetProperty("number").GetInt64().ToString());
        sewn.Stops.ShouldBe(received.Stops);
        Steps(sewn).ShouldBe(Steps(received));
    }

    [Fact]
    public async Task A_design_that_must_not_be_sewn_has_no_tape_to_load()
    {
        await using var service = await ServiceUnderTest.Start();

        var job = await service.Work(Upload.Ticket("QB-3"), TooTall);

        job.Text("verdict").ShouldBe("returnToOrderDesk");
        job.GetProperty("actors").EnumerateArray().Select(actor => actor.GetString()).ShouldContain("orderDesk");
        job.GetProperty("links").TryGetProperty("tape", out _).ShouldBeFalse();
        (await service.Client.Get($"/v1/jobs/{job.Id()}/tape")).Code.ShouldBe("no-tape-to-sew");
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{job.Id()}/tape?version=received")).ShouldBe(TooTall);
    }

    [Fact]
    public async Task An_article_number_of_no_style_holds_the_job_for_the_order_desk()
    {
        await using var service = await ServiceUnderTest.Start();

        var job = await service.Work("""{"orderNumber":"QB-4","capSku":"NO-SUCH-CAP","quantity":12}""", Upload.Tape);

        job.Text("verdict").ShouldBe("returnToOrderDesk");
        job.GetProperty("verdictReasons")[0].Text("rule").ShouldBe("ticket.style");
        (await service.Client.GetByteArrayAsync($"/v1/jobs/{job.Id()}/card")).Length.ShouldBeGreaterThan(1000);
    }

    [Fact]
    public async Task The_same_tape_and_ticket_give_the_same_documents()
    {
        var clock = new Microsoft.Extensions.Time.Testing.FakeTimeProvider(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
        var first = await Digests(clock);

        var second = await Digests(clock);

        second.ShouldBe(first);
    }

    /// <summary>From needle point to needle point: the same wherever the tape starts.</summary>
    private static IEnumerable<(int, int)> Steps(OtherTape tape) => tape.Penetrations.Zip(
        tape.Penetrations.Skip(1), (from, to) => (to.X - from.X, to.Y - from.Y));

    private static async Task<IReadOnlyList<string>> Digests(TimeProvider clock)
    {
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Clock = clock });
        var answer = await service.Client.Post(Upload.Ticket("QB-5"), Upload.Tape);
        var id = answer.Body.Id();
        await Flow.Until(async () => (await service.Client.Get($"/v1/jobs/{id}"))["status"].GetString() == "finished", "the job ends");
        var digests = new List<string>();
        foreach (var path in new[] { "card", "proof", "tape" })
            digests.Add(Sha(await service.Client.GetByteArrayAsync($"/v1/jobs/{id}/{path}")));
        var result = Encoding.UTF8.GetString(await service.Client.GetByteArrayAsync($"/v1/jobs/{id}/result"));
        digests.Add(result.Replace(id, "", StringComparison.Ordinal));
        return digests;
    }

    private static string Sha(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
