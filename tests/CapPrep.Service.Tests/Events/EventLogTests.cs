using System.Text.Json;
using CapPrep.Service.Tests.Bench;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Events;

public sealed class EventLogTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Ends_at_the_same_time_make_one_gapless_chain_that_a_reader_never_misses(Store store)
    {
        Stores.SkipUnlessThere(store);
        const int Jobs = 16;
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var seen = new List<JsonElement>();

        await Task.WhenAll(Enumerable.Range(1, Jobs).Select(line =>
            service.Client.Post(Upload.Ticket("QE-1", ("line", line.ToString())), Upload.Tape)));
        var after = "";
        await Flow.Until(
            async () =>
            {
                var page = await service.Client.Get("/v1/events" + (after.Length == 0 ? "" : "?after=" + after));
                seen.AddRange(page["items"].EnumerateArray());
                after = page["after"].GetString()!;
                return seen.Count >= Jobs;
            },
            "all events are read");

        seen.Select(happened => happened.GetProperty("sequence").GetInt64()).ShouldBe(Enumerable.Range(1, Jobs).Select(i => (long)i));
        seen[0].TryGetProperty("previousId", out _).ShouldBeFalse();
        for (var i = 1; i < Jobs; i++)
            seen[i].Text("previousId").ShouldBe(seen[i - 1].Id());
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task An_order_is_finished_once_however_its_lines_end(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });

        await Task.WhenAll(Enumerable.Range(1, 6).Select(line =>
            service.Client.Post(Upload.Ticket("QE-2", ("line", line.ToString()), ("orderLines", 6)), Upload.Tape)));
        await Flow.Until(async () => (await Orders(service)).Count > 0, "the order is finished");

        var order = (await Orders(service)).ShouldHaveSingleItem().GetProperty("data");
        order.Text("status").ShouldBe("finished");
        order.GetProperty("jobs").GetArrayLength().ShouldBe(6);
        order.GetProperty("counts").GetProperty("sewAsReceived").GetInt32().ShouldBe(6);
    }

    [Fact]
    public async Task A_reader_that_waits_gets_the_next_event_when_it_happens()
    {
        await using var service = await ServiceUnderTest.Start();
        var waiting = service.Client.Get("/v1/events?after=now", ("Prefer", "wait=20"));

        var job = await service.WorkCrest("QE-3");

        var page = await waiting;
        page["items"].EnumerateArray().ShouldHaveSingleItem().GetProperty("data").Id().ShouldBe(job.Id());
    }

    [Fact]
    public async Task An_event_that_never_was_is_refused()
    {
        await using var service = await ServiceUnderTest.Start(QuietService.Quiet(Store.Sqlite));

        (await service.Client.Get("/v1/events?after=evt_zzz")).Code.ShouldBe("query-invalid");
        (await service.Client.Get("/v1/events?after=evt_00000000000070008000000000000001")).Code.ShouldBe("event-expired");
        (await service.Client.Get("/v1/events?after=evt_ffffffffffff7000800000000000000f")).Code.ShouldBe("query-invalid");
        (await service.Client.Get("/v1/events?limit=0&type=job.lost")).Faults.Count.ShouldBe(2);
    }

    private static async Task<IReadOnlyList<JsonElement>> Orders(ServiceUnderTest service) =>
        [.. (await service.Client.Get("/v1/events?type=order.finished"))["items"].EnumerateArray()];
}
