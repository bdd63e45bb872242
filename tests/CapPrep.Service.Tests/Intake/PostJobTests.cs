using System.Net;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

public sealed class PostJobTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Fact]
    public async Task A_tape_and_its_ticket_are_stored_and_handed_over()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("PJ-1"), Upload.Tape);

        answer.Status.ShouldBe(HttpStatusCode.Accepted);
        answer["status"].GetString().ShouldBe("queued");
        var id = answer["id"].GetString()!;
        answer.Header("Location").ShouldBe($"/v1/jobs/{id}");
        quiet.Handover.Jobs.ShouldContain(id);
        var stored = await quiet.Service.Within(ShopScope.Main, services =>
            services.GetRequiredService<DocumentStore>().Find(id, DocumentKinds.TapeReceived, CancellationToken.None));
        stored!.Bytes.ShouldBe(Upload.Tape);
    }

    [Fact]
    public async Task What_the_ticket_leaves_open_comes_from_the_shop_and_is_pinned()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("PJ-2"), Upload.Tape);

        var inputs = answer["inputs"];
        inputs.GetProperty("tapeSha256").GetString().ShouldBe(DocumentStore.Sha(Upload.Tape));
        inputs.GetProperty("capStyle").GetRawText().ShouldBe("""{"id":"six-panel-structured-mid","version":1}""");
        inputs.GetProperty("machine").GetRawText().ShouldBe("""{"id":"eight-head","version":1}""");
        inputs.GetProperty("capFrame").GetProperty("version").GetInt32().ShouldBe(1);
        inputs.GetProperty("framingStation").GetRawText().ShouldBe("""{"id":"gauge-1","version":1}""");
        inputs.GetProperty("ruleBook").GetProperty("id").GetString().ShouldBe("house");
        inputs.TryGetProperty("qrPrefix", out _).ShouldBeFalse();
        answer["ticket"].GetProperty("defaulted").EnumerateArray().Select(pointer => pointer.GetString()).ShouldContain("/machine");
        answer["design"].GetString().ShouldBe("crest");
    }

    [Fact]
    public async Task The_stored_ticket_reads_back_as_it_was_resolved()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("PJ-3", ("location", "left"), ("capFrame", "flat-clamp"), ("machine", "one-head")), Upload.Tape);

        var row = await Row(answer);
        var resolved = ResolvedTicketReader.Read(row.TicketResolved);
        resolved.Location.ShouldBe(CapLocation.Left);
        resolved.CapFrame.ShouldBe("flat-clamp");
        resolved.ThreadWeightWt.ShouldBe(40);
        JobInputs.Read(row.Inputs).Bytes().ShouldBe(row.Inputs);
    }

    [Fact]
    public async Task A_json_body_is_taken_like_two_parts()
    {
        var answer = await quiet.Client.Post(Upload.Json(Upload.Ticket("PJ-4"), Upload.Tape));

        answer.Status.ShouldBe(HttpStatusCode.Accepted);
        answer["design"].GetString().ShouldBe("PJ-4");
        answer.Body.TryGetProperty("fileName", out _).ShouldBeFalse();
    }

    [Fact]
    public async Task The_callers_own_data_comes_back_byte_for_byte()
    {
        var ticket = """{"orderNumber":"PJ-5","capStyle":"visor","quantity":3,"echo":{"a":1.50,"b":[ 1,2 ]}}""";

        var answer = await quiet.Client.Post(ticket, Upload.Tape);

        answer["echo"].GetRawText().ShouldBe("""{"a":1.50,"b":[ 1,2 ]}""");
    }

    [Fact]
    public async Task An_unknown_article_number_keeps_the_job_and_names_the_nearest_styles()
    {
        var ticket = """{"orderNumber":"PJ-6","capSku":"NOBODY-HAS-THIS","quantity":3}""";

        var answer = await quiet.Client.Post(ticket, Upload.Tape);

        answer.Status.ShouldBe(HttpStatusCode.Accepted);
        answer["inputs"].TryGetProperty("capStyle", out _).ShouldBeFalse();
        answer["inputs"].GetProperty("styleSuggestions").GetArrayLength().ShouldBeGreaterThan(0);
        (await Row(answer)).CapStyle.ShouldBeNull();
    }

    [Theory]
    [InlineData("../../etc/passwd", "passwd")]
    [InlineData("C:\\jobs\\lions.dst", "lions.dst")]
    [InlineData("lions\u0007 front.dst", "lions front.dst")]
    public async Task A_file_name_is_a_text_and_no_path(string given, string kept)
    {
        var content = Upload.Parts(Upload.Ticket("PJ-7"), Upload.Tape, fileName: null);
        content.Last().Headers.Remove("Content-Disposition");
        content.Last().Headers.TryAddWithoutValidation("Content-Disposition", $"form-data; name=\"tape\"; filename*=UTF-8''{Uri.EscapeDataString(given)}");

        var answer = await quiet.Client.Post(content);

        answer["fileName"].GetString().ShouldBe(kept);
    }

    [Fact]
    public async Task Waiting_ends_with_the_wish_and_says_what_was_applied()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("PJ-8"), Upload.Tape, ("Prefer", "wait=0"));

        answer.Status.ShouldBe(HttpStatusCode.Accepted);
        answer.Header("Preference-Applied").ShouldBe("wait=0");
    }

    [Fact]
    public async Task A_refusal_applies_no_preference()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("PJ-9", ("quantity", 0)), Upload.Tape, ("Prefer", "wait=5"));

        answer.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        answer.Header("Preference-Applied").ShouldBeNull();
    }

    [Fact]
    public async Task Above_the_limit_of_waiting_jobs_nothing_is_stored()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite, ("Queue:MaxWaiting", "2")));
        await service.Client.Post(Upload.Ticket("Q-1"), Upload.Tape);
        await service.Client.Post(Upload.Ticket("Q-2"), Upload.Tape);

        var answer = await service.Client.Post(Upload.Ticket("Q-3"), Upload.Tape);

        answer.Status.ShouldBe(HttpStatusCode.ServiceUnavailable);
        answer.Code.ShouldBe("overloaded");
        answer.Header("Retry-After").ShouldNotBeNull();
        (await service.Look(db => db.Jobs.CountAsync())).ShouldBe(2);
    }

    [Fact]
    public async Task The_text_in_front_of_the_code_is_pinned()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite, ("Cards:QrPrefix", "https://caps.example/")));

        var answer = await service.Client.Post(Upload.Ticket("Q-4"), Upload.Tape);

        answer["inputs"].GetProperty("qrPrefix").GetString().ShouldBe("https://caps.example/");
    }

    [Fact]
    public async Task The_limit_of_waiting_jobs_is_counted_by_an_index()
    {
        var plan = await quiet.Service.Look(async db =>
        {
            var sql = db.Jobs.Where(job => job.Status == JobStatus.Queued || job.Status == JobStatus.Working).Select(job => job.Id).ToQueryString();
            var connection = db.Database.GetDbConnection();
            await db.Database.OpenConnectionAsync();
            var command = connection.CreateCommand();
            await using (command)
            {
                command.CommandText = "EXPLAIN QUERY PLAN SELECT COUNT(*) " + sql[sql.IndexOf("FROM", StringComparison.Ordinal)..];
                await using var reader = await command.ExecuteReaderAsync();
                await reader.ReadAsync();
                return reader.GetString(3);
            }
        });

        plan.ShouldContain("ix_jobs_queued_at");
    }

    private Task<JobRow> Row(Answer answer)
    {
        var id = answer["id"].GetString();
        return quiet.Service.Look(db => db.Jobs.SingleAsync(job => job.Id == id));
    }
}
