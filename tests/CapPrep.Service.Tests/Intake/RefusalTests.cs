using System.Net;
using System.Security.Cryptography;
using System.Text;
using CapPrep.TestKit.Service;
using CsCheck;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

public sealed class RefusalTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Fact]
    public async Task An_empty_file_is_refused()
    {
        var answer = await Send([]);

        answer.Code.ShouldBe("tape-invalid");
        answer.Faults.ShouldBe(["byte 0 tape-empty"]);
    }

    [Fact]
    public async Task A_file_that_is_too_short_is_refused_with_the_byte_it_ends_at()
    {
        var answer = await Send(Upload.Tape[..407]);

        answer.Faults.ShouldBe(["byte 407 tape-too-short"]);
        answer["detail"].GetString()!.ShouldContain("byte 407");
    }

    [Fact]
    public async Task A_text_file_is_refused_by_name()
    {
        var answer = await Send(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("Dear order desk, the crest is attached.\n", 40))));

        answer.Faults.ShouldBe(["byte 0 tape-is-text"]);
    }

    [Fact]
    public async Task A_header_without_a_stitch_is_refused()
    {
        var answer = await Send([.. Upload.Tape[..512], 0x00, 0x00, 0xF3]);

        answer.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        answer.Faults.ShouldHaveSingleItem().ShouldContain("byte 512");
    }

    [Fact]
    public async Task Random_bytes_are_refused_with_a_byte_or_sewn_and_never_end_the_service()
    {
        await Gen.Byte.Array[1, 4000].SampleAsync(async bytes =>
        {
            var answer = await Send(bytes);
            answer.Status.ShouldBeOneOf(HttpStatusCode.UnprocessableEntity, HttpStatusCode.Accepted);
            if (answer.Status == HttpStatusCode.UnprocessableEntity)
                answer.Faults.ShouldAllBe(fault => fault.StartsWith("byte "));
        }, iter: 60, threads: 1);
    }

    [Fact]
    public async Task Every_fault_of_ticket_and_tape_comes_at_once()
    {
        var ticket = """{"orderNumber":"R-1","capStyle":"six-panel","quantity":0,"qty":48,"line":"1","line":"2","machine":"ten-head"}""";

        var answer = await quiet.Client.Post(ticket, []);

        answer.Status.ShouldBe(HttpStatusCode.UnprocessableEntity);
        answer.Code.ShouldBe("ticket-invalid");
        answer.ContentType.ShouldBe("application/problem+json");
        answer.Faults.Order(StringComparer.Ordinal).ShouldBe(
        [
            "/capStyle unknown-id", "/line duplicate-field", "/machine unknown-id", "/qty unknown-field", "/quantity out-of-range",
            "byte 0 tape-empty",
        ]);
        var style = answer["violations"].EnumerateArray().First();
        style.GetProperty("allowed").EnumerateArray().Select(id => id.GetString()).ShouldContain("six-panel-structured-mid");
    }

    [Fact]
    public async Task A_missing_field_is_named()
    {
        var answer = await quiet.Client.Post("""{"orderNumber":"R-2","capStyle":"visor"}""", Upload.Tape);

        answer.Faults.ShouldBe(["/quantity required"]);
    }

    [Fact]
    public async Task A_tape_that_is_not_the_tickets_is_refused()
    {
        var answer = await quiet.Client.Post(Upload.Ticket("R-3", ("tapeSha256", new string('0', 64))), Upload.Tape);

        answer.Code.ShouldBe("ticket-invalid");
        answer.Faults.ShouldBe(["/tapeSha256 sha-mismatch"]);
    }

    [Fact]
    public async Task A_ticket_that_is_no_json_is_refused_with_its_byte()
    {
        var answer = await quiet.Client.Post("""{"orderNumber":"R-4",}""", Upload.Tape);

        answer.Code.ShouldBe("ticket-invalid");
        answer.Faults.ShouldHaveSingleItem().ShouldStartWith("byte 21");
    }

    [Fact]
    public async Task A_body_that_is_no_json_is_malformed()
    {
        var answer = await quiet.Client.Post(new StringContent("{\"ticket\":", Encoding.UTF8, "application/json"));

        answer.Status.ShouldBe(HttpStatusCode.BadRequest);
        answer.Code.ShouldBe("request-malformed");
    }

    [Fact]
    public async Task A_tape_that_is_no_base64_is_malformed_and_foreign_members_are_named()
    {
        var body = $$"""{"ticket":{{Upload.Ticket("R-5")}},"tape":"###","priority":1}""";

        var answer = await quiet.Client.Post(new StringContent(body, Encoding.UTF8, "application/json"));

        answer.Status.ShouldBe(HttpStatusCode.BadRequest);
        answer.Faults.Order(StringComparer.Ordinal).ShouldBe(["/priority unknown-field", "/tape bad-format"]);
    }

    [Fact]
    public async Task Missing_double_and_foreign_parts_are_refused_together()
    {
        var content = new MultipartFormDataContent
        {
            { new StringContent(Upload.Ticket("R-6")), "ticket" },
            { new StringContent(Upload.Ticket("R-6")), "ticket" },
            { new StringContent("x"), "note" },
        };

        var answer = await quiet.Client.Post(content);

        answer.Status.ShouldBe(HttpStatusCode.BadRequest);
        answer.Code.ShouldBe("multipart-invalid");
        answer.Faults.ShouldBe(["body duplicate-field", "body unknown-field", "body required"]);
    }

    [Theory]
    [InlineData("multipart/form-data")]
    [InlineData("multipart/form-data; boundary=\"\"")]
    [InlineData("multipart/form-data; boundary=nowhere")]
    public async Task Parts_that_cannot_be_told_apart_are_refused(string contentType)
    {
        var content = new ByteArrayContent("--other\r\n\r\nx"u8.ToArray());
        content.Headers.TryAddWithoutValidation("Content-Type", contentType);

        var answer = await quiet.Client.Post(content);

        answer.Code.ShouldBe("multipart-invalid");
    }

    [Fact]
    public async Task Another_content_type_is_refused()
    {
        var answer = await quiet.Client.Post(new StringContent("hello", Encoding.UTF8, "text/plain"));

        answer.Status.ShouldBe(HttpStatusCode.UnsupportedMediaType);
        answer.Code.ShouldBe("media-type-unknown");
    }

    [Fact]
    public async Task A_tape_and_a_ticket_over_their_limits_are_told_apart()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite, ("Uploads:MaxTapeBytes", "2000"), ("Uploads:MaxTicketBytes", "1000")));

        var tape = await service.Client.Post(Upload.Ticket("R-7"), new byte[2001]);
        var ticket = await service.Client.Post(Upload.Ticket("R-7", ("design", new string('x', 1000))), Upload.Tape[..600]);
        var both = await service.Client.Post(Upload.Ticket("R-7"), new byte[30_000]);

        tape.Code.ShouldBe("tape-too-large");
        ticket.Code.ShouldBe("ticket-too-large");
        both.Code.ShouldBe("body-too-large");
        both.Status.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
    }

    [Fact]
    public async Task More_records_than_are_read_are_refused()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite, ("Uploads:MaxRecords", "10")));

        var answer = await service.Client.Post(Upload.Ticket("R-8"), Upload.Tape);

        answer.Faults.ShouldBe(["byte 542 too-many-records"]);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_hundred_megabytes_are_refused_and_the_service_goes_on(bool lengthIsKnown)
    {
        var answer = await quiet.Client.Post(new Endless(100L * 1024 * 1024, lengthIsKnown));

        answer.Status.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        answer.Code.ShouldBe("body-too-large");
        (await quiet.Client.Post(Upload.Ticket("R-9"), Upload.Tape)).Status.ShouldBe(HttpStatusCode.Accepted);
    }

    [Fact]
    public async Task A_client_that_asks_first_sends_nothing_of_what_is_too_long()
    {
        var body = new Endless(100L * 1024 * 1024, known: true);

        var answer = await quiet.Client.Post(body, ("Expect", "100-continue"));

        answer.Code.ShouldBe("body-too-large");
        body.Sent.ShouldBe(0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\"\"")]
    [InlineData("with blank")]
    public async Task A_key_of_other_characters_is_refused(string key)
    {
        var answer = await quiet.Client.Post(Upload.Ticket("R-10"), Upload.Tape, ("Idempotency-Key", key));

        answer.Status.ShouldBe(HttpStatusCode.BadRequest);
        answer.Code.ShouldBe("header-invalid");
    }

    [Fact]
    public async Task A_body_that_was_changed_on_the_way_is_refused()
    {
        var body = await Upload.Json(Upload.Ticket("R-11"), Upload.Tape).ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

        var right = await SendDigest(body, SHA256.HashData(body));
        var wrong = await SendDigest(body, SHA256.HashData("other"u8));

        right.Status.ShouldBe(HttpStatusCode.Accepted);
        wrong.Code.ShouldBe("digest-mismatch");
    }

    [Fact]
    public async Task A_retired_style_is_refused_and_those_in_use_are_named()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));
        using var request = new HttpRequestMessage(HttpMethod.Delete, "/v1/cap-styles/visor");
        request.Headers.TryAddWithoutValidation("If-Match", "\"1\"");
        (await service.Client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        var answer = await service.Client.Post(Upload.Ticket("R-12", ("capStyle", "visor")), Upload.Tape);

        answer.Faults.ShouldBe(["/capStyle retired-id"]);
        answer["violations"][0].GetProperty("allowed").EnumerateArray().Select(id => id.GetString()).ShouldNotContain("visor");
    }

    [Fact]
    public async Task A_key_without_the_scope_is_refused()
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("main", "read"));

        (await client.Post(Upload.Ticket("R-13"), Upload.Tape)).Code.ShouldBe("scope-missing");
    }

    [Fact]
    public async Task A_refused_request_leaves_nothing_behind()
    {
        await quiet.Client.Post(Upload.Ticket("R-14"), []);

        (await quiet.Service.Look(db => db.Jobs.CountAsync(job => job.OrderNumber == "R-14"))).ShouldBe(0);
    }

    private Task<Answer> Send(byte[] tape) => quiet.Client.Post(Upload.Ticket("R"), tape);

    private Task<Answer> SendDigest(byte[] body, byte[] digest)
    {
        var content = new ByteArrayContent(body);
        content.Headers.TryAddWithoutValidation("Content-Type", "application/json");
        content.Headers.TryAddWithoutValidation("Content-Digest", $"sha-256=:{Convert.ToBase64String(digest)}:");
        return quiet.Client.Post(content);
    }

    /// <summary>A body of zeros that counts how many of them the other side took.</summary>
    private sealed class Endless : HttpContent
    {
        private readonly long _length;
        private readonly bool _known;

        public Endless(long length, bool known)
        {
            (_length, _known) = (length, known);
            Headers.TryAddWithoutValidation("Content-Type", "multipart/form-data; boundary=b");
        }

        public long Sent { get; private set; }

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            var block = new byte[64 * 1024];
            while (Sent < _length)
            {
                await stream.WriteAsync(block);
                Sent += block.Length;
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = _length;
            return _known;
        }
    }
}
