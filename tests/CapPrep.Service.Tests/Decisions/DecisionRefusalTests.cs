using System.Net;
using System.Text;
using CapPrep.Service.Jobs;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Decisions;

public sealed class DecisionRefusalTests : IAsyncLifetime
{
    private ServiceUnderTest _service = null!;
    private string _job = null!;

    public async ValueTask InitializeAsync()
    {
        _service = await ServiceUnderTest.Start();
        _job = (await _service.Work(Upload.Ticket("DR-1"), Deciding.TooTall)).Id();
    }

    public ValueTask DisposeAsync() => _service.DisposeAsync();

    [Theory]
    [InlineData("""{}""", "/decision required", "/by required")]
    [InlineData("""{"decision":"maybe","by":"M"}""", "/decision bad-format")]
    [InlineData("""{"decision":"accept","by":""}""", "/by bad-format")]
    [InlineData("""{"decision":"accept","by":"M","findings":[]}""", "/findings out-of-range")]
    [InlineData("""{"decision":"accept","by":"M","findings":[0,1.5,"2"]}""", "/findings/0 out-of-range", "/findings/1 wrong-type", "/findings/2 wrong-type")]
    [InlineData("""{"decision":"accept","by":"M","findings":[1,9999,1]}""", "/findings/1 unknown-id", "/findings/2 contradicts")]
    [InlineData("""{"decision":"accept","by":"M","note":"x"}""", "/note unknown-field")]
    [InlineData("""{"decision":"approveSample","by":"M","findings":[1]}""", "/findings contradicts", "/decision contradicts")]
    public async Task A_decision_that_cannot_be_used_is_refused_with_every_fault(string body, params string[] faults)
    {
        var answer = await _service.Client.Decide(_job, body);

        answer.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        answer.Code.ShouldBe("decision-invalid");
        answer.Faults.ShouldBe(faults);
        (await _service.Look(db => db.Decisions.AnyAsync(TestContext.Current.CancellationToken))).ShouldBeFalse();
    }

    [Fact]
    public async Task Names_and_reasons_have_their_bounds()
    {
        var (by, reason) = (new string('b', 61), new string('r', 401));

        var answer = await _service.Client.Decide(_job, $$"""{"decision":"accept","by":"{{by}}","reason":"{{reason}}"}""");

        answer.Faults.ShouldBe(["/by too-long", "/reason too-long"]);
    }

    [Fact]
    public async Task What_is_no_JSON_or_too_large_is_not_read()
    {
        (await _service.Client.Decide(_job, """{"decision":""")).Code.ShouldBe("request-malformed");
        var huge = $$"""{"decision":"accept","by":"M","reason":"{{new string('x', 20_000_000)}}"}""";
        (await _service.Client.Decide(_job, huge)).Code.ShouldBe("body-too-large");
        using var plain = new StringContent("accept", Encoding.UTF8, "text/plain");
        using var response = await _service.Client.PostAsync($"/v1/jobs/{_job}/decision", plain, TestContext.Current.CancellationToken);
        (await Answer.Of(response)).Code.ShouldBe("media-type-unknown");
        (await _service.Client.Decide(_job, Deciding.Body("accept"), "not a key")).Code.ShouldBe("header-invalid");
    }

    [Fact]
    public async Task Another_shops_job_an_unknown_one_and_an_erased_one_are_not_there()
    {
        var stranger = _service.ClientWith(await _service.NewKey("harbor", "manage"));
        (await stranger.Accept(_job)).Code.ShouldBe("not-found");
        (await _service.Client.Accept("job_0193f0c2b7a47d0e9a51c3e8f2b6d714")).Code.ShouldBe("not-found");
        var erased = (await _service.Work(Upload.Ticket("DR-2"), Deciding.TooTall)).Id();
        (await _service.Client.DeleteAsync($"/v1/jobs/{erased}", TestContext.Current.CancellationToken)).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        (await _service.Client.Accept(erased)).Code.ShouldBe("not-found");
    }

    [Fact]
    public async Task A_job_that_waits_or_is_worked_on_cannot_be_decided_yet()
    {
        await using var quiet = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        var waiting = (await quiet.Client.Post(Upload.Ticket("DR-4"), Upload.Tape)).Body.Id();

        var answer = await quiet.Client.Accept(waiting);

        answer.Code.ShouldBe("job-not-finished");
        answer.Header("Retry-After").ShouldBe("1");
    }

    [Fact]
    public async Task A_failed_job_cannot_be_decided()
    {
        await using var torn = await ServiceUnderTest.Start(new ServiceOptions
        {
            Adjust = services => services.AddSingleton<IPaperMaker, TornPaper>(),
        });
        var failed = (await torn.WorkCrest("DR-5")).Id();

        (await torn.Client.Accept(failed)).Code.ShouldBe("job-failed");
    }

    private sealed class TornPaper : IPaperMaker
    {
        public Papers Make(PreparedJob prepared) => throw new InvalidOperationException($"torn {prepared.Preparation.Verdict}");
    }
}
