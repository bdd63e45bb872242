using System.Net;
using System.Text.Json.Nodes;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

public sealed class IdempotencyTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Fifty_equal_requests_at_once_make_one_job(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(store));

        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ =>
            service.Client.Post(Upload.Ticket("I-1"), Upload.Tape, ("Idempotency-Key", "fifty"))));

        answers.Select(answer => answer.Status).Distinct().ShouldBe([HttpStatusCode.Accepted]);
        answers.Select(answer => answer["id"].GetString()).Distinct().ShouldHaveSingleItem();
        answers.Count(answer => answer.Header("Idempotency-Replayed") == "true").ShouldBe(49);
        (await service.Look(db => db.Jobs.CountAsync())).ShouldBe(1);
    }

    [Fact]
    public async Task A_repetition_in_another_form_is_the_same_request()
    {
        var first = await quiet.Client.Post(Upload.Parts(Upload.Ticket("I-2"), Upload.Tape, "a.dst", "one"), ("Idempotency-Key", "form"));

        HttpContent[] forms =
        [
            Upload.Parts(Upload.Ticket("I-2"), Upload.Tape, "b.dst", "two", tapeFirst: true),
            Upload.Parts("""{ "quantity" : 48.0, "capStyle":"six-panel-structured-mid",  "orderNumber":"I\u002d2" }""", Upload.Tape, fileName: null),
            Upload.Json(Upload.Ticket("I-2"), Upload.Tape),
        ];
        foreach (var form in forms)
        {
            var again = await quiet.Client.Post(form, ("Idempotency-Key", "\"form\""));
            again["id"].GetString().ShouldBe(first["id"].GetString());
            again.Header("Idempotency-Replayed").ShouldBe("true");
        }
    }

    [Fact]
    public async Task A_key_for_another_tape_or_ticket_is_refused()
    {
        await quiet.Client.Post(Upload.Ticket("I-3"), Upload.Tape, ("Idempotency-Key", "reused"));

        var otherTape = await quiet.Client.Post(Upload.Ticket("I-3"), Upload.OtherTape, ("Idempotency-Key", "reused"));
        var otherTicket = await quiet.Client.Post(Upload.Ticket("I-3", ("quantity", 49)), Upload.Tape, ("Idempotency-Key", "reused"));

        otherTape.Code.ShouldBe("idempotency-key-reused");
        otherTicket.Code.ShouldBe("idempotency-key-reused");
        otherTicket.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
    }

    [Fact]
    public async Task Without_a_key_every_request_is_a_job()
    {
        var first = await quiet.Client.Post(Upload.Ticket("I-4"), Upload.Tape);
        var second = await quiet.Client.Post(Upload.Ticket("I-4"), Upload.Tape);

        second["id"].GetString().ShouldNotBe(first["id"].GetString());
        second.Header("Idempotency-Replayed").ShouldBeNull();
    }

    [Fact]
    public async Task A_refused_request_does_not_use_up_its_key()
    {
        var refused = await quiet.Client.Post(Upload.Ticket("I-5", ("quantity", 0)), Upload.Tape, ("Idempotency-Key", "again"));
        var mended = await quiet.Client.Post(Upload.Ticket("I-5"), Upload.Tape, ("Idempotency-Key", "again"));

        refused.Code.ShouldBe("ticket-invalid");
        mended.Status.ShouldBe(HttpStatusCode.Accepted);
    }

    [Fact]
    public async Task Two_shops_may_use_the_same_key()
    {
        var other = quiet.Service.ClientWith(await quiet.Service.NewKey("harbor", "submit"));

        var here = await quiet.Client.Post(Upload.Ticket("I-6"), Upload.Tape, ("Idempotency-Key", "shops"));
        var there = await other.Post(Upload.Ticket("I-6"), Upload.Tape, ("Idempotency-Key", "shops"));

        there["id"].GetString().ShouldNotBe(here["id"].GetString());
        there["number"].GetInt64().ShouldBe(1);
    }

    [Fact]
    public async Task A_repetition_gets_its_job_although_the_style_was_retired_meanwhile()
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("retiring", "submit", "manage"));
        var ticket = Upload.Ticket("I-7", ("capStyle", "visor"), ("location", JsonValue.Create("visor")));
        var first = await client.Post(ticket, Upload.Tape, ("Idempotency-Key", "retired"));
        using var retire = new HttpRequestMessage(HttpMethod.Delete, "/v1/cap-styles/visor");
        retire.Headers.TryAddWithoutValidation("If-Match", "\"1\"");
        await client.SendAsync(retire, TestContext.Current.CancellationToken);

        var again = await client.Post(ticket, Upload.Tape, ("Idempotency-Key", "retired"));
        var anew = await client.Post(ticket, Upload.Tape, ("Idempotency-Key", "anew"));

        again["id"].GetString().ShouldBe(first["id"].GetString());
        anew.Faults.ShouldBe(["/capStyle retired-id"]);
    }

    [Fact]
    public async Task After_seven_days_a_key_is_free_again()
    {
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite) with { Clock = clock });
        var first = await service.Client.Post(Upload.Ticket("I-8"), Upload.Tape, ("Idempotency-Key", "week"));

        clock.Advance(TimeSpan.FromDays(6.9));
        var within = await service.Client.Post(Upload.Ticket("I-8"), Upload.Tape, ("Idempotency-Key", "week"));
        clock.Advance(TimeSpan.FromDays(0.2));
        var after = await service.Client.Post(Upload.Ticket("I-8", ("quantity", 12)), Upload.Tape, ("Idempotency-Key", "week"));

        within["id"].GetString().ShouldBe(first["id"].GetString());
        after.Status.ShouldBe(HttpStatusCode.Accepted);
        after["id"].GetString().ShouldNotBe(first["id"].GetString());
    }
}
