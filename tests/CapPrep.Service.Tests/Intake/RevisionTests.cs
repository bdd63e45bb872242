using System.Text.Json.Nodes;
using CapPrep.Service.Storage.Rows;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

public sealed class RevisionTests(QuietService quiet) : IClassFixture<QuietService>
{
    [Fact]
    public async Task A_second_tape_for_the_same_line_is_the_next_revision()
    {
        var first = await quiet.Client.Post(Upload.Ticket("V-1"), Upload.Tape);
        var second = await quiet.Client.Post(Upload.Ticket("V-1"), Upload.OtherTape);

        second["revision"].GetInt32().ShouldBe(2);
        second["replaces"].GetString().ShouldBe(first["id"].GetString());
        second["latest"].GetBoolean().ShouldBeTrue();
        var replaced = await Row(first);
        replaced.ReplacedBy.ShouldBe(second["id"].GetString());
        replaced.Position.ShouldBeLessThan((await Row(second)).Position);
        replaced.Changed.ShouldBeGreaterThanOrEqualTo(replaced.Received);
    }

    [Fact]
    public async Task Another_line_or_location_begins_anew()
    {
        string[] tickets =
        [
            Upload.Ticket("V-2"),
            Upload.Ticket("V-2", ("line", "2")),
            Upload.Ticket("V-2", ("location", "left")),
            Upload.Ticket("V-2-b"),
        ];

        foreach (var ticket in tickets)
            (await quiet.Client.Post(ticket, Upload.Tape))["revision"].GetInt32().ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Jobs_that_come_at_once_get_numbers_and_revisions_without_gaps(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(store));

        await Task.WhenAll(Enumerable.Range(0, 40).Select(i => service.Client.Post(Upload.Ticket($"V-{i % 4}"), Upload.Tape)));

        var jobs = await service.Look(db => db.Jobs.OrderBy(job => job.Number).ToArrayAsync());
        jobs.Select(job => job.Number).ShouldBe(Enumerable.Range(1, 40).Select(number => (long)number));
        foreach (var line in jobs.GroupBy(job => job.OrderNumber))
            ShouldBeOneLine([.. line.OrderBy(job => job.Revision)]);
        jobs.Select(job => job.Position).Distinct().Count().ShouldBe(40);
        (await service.Look(db => db.Counters.SingleAsync(counter => counter.Name == "position"))).Value.ShouldBe(40 + 36);
    }

    [Fact]
    public async Task A_refused_request_takes_no_number()
    {
        var client = quiet.Service.ClientWith(await quiet.Service.NewKey("numbers", "submit"));
        await client.Post(Upload.Ticket("V-3"), Upload.Tape);
        await client.Post(Upload.Ticket("V-3", ("quantity", JsonValue.Create("many"))), Upload.Tape);

        var next = await client.Post(Upload.Ticket("V-4"), Upload.Tape);

        next["number"].GetInt64().ShouldBe(2);
    }

    [Fact]
    public async Task A_foreign_shops_job_is_not_there()
    {
        var job = await quiet.Client.Post(Upload.Ticket("V-5"), Upload.Tape);
        var other = quiet.Service.ClientWith(await quiet.Service.NewKey("foreign", "read", "submit"));

        var answer = await Answer.Of(await other.GetAsync($"/v1/jobs/{job["id"].GetString()}", TestContext.Current.CancellationToken));

        answer.Code.ShouldBe("not-found");
    }

    private static void ShouldBeOneLine(JobRow[] revisions)
    {
        revisions.Select(job => job.Revision).ShouldBe(Enumerable.Range(1, revisions.Length));
        for (var i = 1; i < revisions.Length; i++)
        {
            revisions[i].Replaces.ShouldBe(revisions[i - 1].Id);
            revisions[i - 1].ReplacedBy.ShouldBe(revisions[i].Id);
        }

        revisions[^1].ReplacedBy.ShouldBeNull();
    }

    private Task<JobRow> Row(Answer answer)
    {
        var id = answer["id"].GetString();
        return quiet.Service.Look(db => db.Jobs.SingleAsync(job => job.Id == id));
    }
}
