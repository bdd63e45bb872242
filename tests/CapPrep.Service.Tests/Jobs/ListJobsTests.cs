using System.Net;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Jobs;

public sealed class ListJobsTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_filter_with_control_characters_is_refused(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(store));

        (await service.Client.Get("/v1/jobs?orderNumber=%00")).Faults.ShouldBe(["orderNumber bad-format"]);
        (await service.Client.Get("/v1/events?after=%00")).Code.ShouldBe("query-invalid");
    }

    [Fact]
    public async Task Pages_of_the_newest_first_hold_every_job_once()
    {
        for (var line = 1; line <= 5; line++)
            await quiet.Client.Post(Upload.Ticket("L-1", ("line", line.ToString())), Upload.Tape);

        var lines = new List<string>();
        var path = "/v1/jobs?orderNumber=L-1&limit=2";
        for (var more = true; more;)
        {
            var page = await quiet.Client.Get(path);
            lines.AddRange(page["items"].EnumerateArray().Select(job => job.Text("line")));
            more = page["more"].GetBoolean();
            page.Body.TryGetProperty("cursor", out var cursor).ShouldBe(more);
            path = $"/v1/jobs?orderNumber=L-1&limit=2&cursor={cursor}";
        }

        lines.ShouldBe(["5", "4", "3", "2", "1"]);
    }

    [Fact]
    public async Task Filters_leave_out_what_was_not_asked_for()
    {
        await quiet.Client.Post(Upload.Ticket("L-2", ("customer", "harbor"), ("digitizer", "Ada")), Upload.Tape);
        await quiet.Client.Post(Upload.Ticket("L-2", ("customer", "pier")), Upload.OtherTape);
        await quiet.Client.Post(Upload.Ticket("L-2", ("line", "2"), ("location", "back")), Upload.Tape);

        (await Count("")).ShouldBe(3);
        (await Count("&latest=true")).ShouldBe(2);
        (await Count("&latest=false&customer=harbor")).ShouldBe(1);
        (await Count("&digitizer=Ada")).ShouldBe(1);
        (await Count("&line=2")).ShouldBe(1);
        (await Count("&capStyle=six-panel-structured-mid")).ShouldBe(3);
        (await Count("&status=queued&status=working")).ShouldBe(3);
        (await Count("&status=finished")).ShouldBe(0);
        (await Count("&verdict=sewAsReceived")).ShouldBe(0);
        (await Count("&door=http")).ShouldBe(3);
        (await Count("&receivedFrom=2020-01-01T00:00:00Z&receivedTo=2021-01-01T00:00:00%2B01:00")).ShouldBe(0);
    }

    [Fact]
    public async Task A_list_shows_no_tickets()
    {
        await quiet.Client.Post(Upload.Ticket("L-3"), Upload.Tape);

        var job = (await quiet.Client.Get("/v1/jobs?orderNumber=L-3"))["items"][0];

        job.TryGetProperty("ticket", out _).ShouldBeFalse();
        job.TryGetProperty("inputs", out _).ShouldBeTrue();
    }

    [Fact]
    public async Task Every_fault_of_a_query_comes_at_once()
    {
        var answer = await quiet.Client.Get("/v1/jobs?color=red&status=ready&limit=none&receivedFrom=yesterday&line=1&line=2&cursor=abc");

        answer.Status.ShouldBe(HttpStatusCode.BadRequest);
        answer.Faults.Order().ShouldBe(
        [
            "color unknown-field", "cursor contradicts", "limit out-of-range", "line duplicate-field",
            "receivedFrom bad-format", "status bad-format",
        ]);
    }

    [Fact]
    public async Task A_cursor_belongs_to_its_filters()
    {
        await quiet.Client.Post(Upload.Ticket("L-4"), Upload.Tape);
        var cursor = (await quiet.Client.Get("/v1/jobs?orderNumber=L-4&sort=changed"))["cursor"].GetString();

        (await quiet.Client.Get($"/v1/jobs?orderNumber=L-4&sort=changed&limit=7&cursor={cursor}")).Status.ShouldBe(HttpStatusCode.OK);
        (await quiet.Client.Get($"/v1/jobs?orderNumber=L-5&sort=changed&cursor={cursor}")).Code.ShouldBe("query-invalid");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_reader_of_changes_sees_the_end_of_every_job_however_many_end_at_once(Store store)
    {
        Stores.SkipUnlessThere(store);
        const int Jobs = 16;
        await using var service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Settings = new Dictionary<string, string?> { ["Workers:Count"] = "4" },
        });
        var ended = new List<string>();
        var reading = Read(service, Jobs, ended);

        var answers = await Task.WhenAll(Enumerable.Range(1, Jobs).Select(line =>
            service.Client.Post(Upload.Ticket("L-6", ("line", line.ToString())), Upload.Tape)));
        answers.ShouldAllBe(answer => answer.Status == HttpStatusCode.Accepted || answer.Status == HttpStatusCode.OK);
        await reading;

        ended.Count.ShouldBe(Jobs);
        ended.Distinct().Count().ShouldBe(Jobs);
    }

    /// <summary>Follows the cursor of a list that holds finished jobs only, so that each one comes once, when it ends.</summary>
    private static async Task Read(ServiceUnderTest service, int jobs, List<string> ended)
    {
        const string Path = "/v1/jobs?sort=changed&status=finished&limit=3";
        var next = Path;
        await Flow.Until(
            async () =>
            {
                var page = await service.Client.Get(next);
                ended.AddRange(page["items"].EnumerateArray().Select(job => job.Id()));
                next = $"{Path}&cursor={page["cursor"]}";
                return ended.Count >= jobs;
            },
            "the reader has seen every end");
    }

    private async Task<int> Count(string filters)
    {
        var answer = await quiet.Client.Get($"/v1/jobs?orderNumber=L-2{filters}");
        answer.Status.ShouldBe(HttpStatusCode.OK, answer.Body.ToString());
        return answer["items"].GetArrayLength();
    }
}
