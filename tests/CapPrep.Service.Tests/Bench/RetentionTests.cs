using CapPrep.Service.Bench;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage.Rows;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class RetentionTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Pictures_go_first_and_the_job_shows_the_change_then_the_job_itself(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });
        var id = (await service.WorkCrest("T-1")).Id();
        var cursor = (await service.Client.Get("/v1/jobs?sort=changed"))["cursor"].GetString();

        await Retain(service, days: 91);

        (await service.Client.Get($"/v1/jobs?sort=changed&cursor={cursor}"))["items"].EnumerateArray().ShouldHaveSingleItem().Id().ShouldBe(id);
        (await service.Client.Get($"/v1/jobs/{id}/proof")).Code.ShouldBe("document-expired");
        await Retain(service, days: 731);
        (await service.Client.Get($"/v1/jobs/{id}")).Code.ShouldBe("not-found");
        (await service.Look(db => db.Documents.CountAsync())).ShouldBe(0);
    }

    [Fact]
    public async Task Old_events_go_but_for_the_newest_of_a_type_and_a_reader_of_a_gone_one_is_told()
    {
        await using var service = await ServiceUnderTest.Start();
        for (var line = 1; line <= 3; line++)
            await service.WorkCrest("T-2", ("line", line.ToString()));
        var events = (await service.Client.Get("/v1/events"))["items"].EnumerateArray().Select(happened => happened.Id()).ToArray();

        await Retain(service, days: 31);

        (await service.Client.Get("/v1/events"))["items"].EnumerateArray().ShouldHaveSingleItem().Id().ShouldBe(events[2]);
        var gone = await service.Client.Get($"/v1/events?after={events[0]}");
        gone.Code.ShouldBe("event-expired");
        gone["detail"].GetString()!.ShouldContain(events[2]);
        await service.WorkCrest("T-2", ("line", "4"));
        (await service.Client.Get($"/v1/events?after={events[2]}"))["items"][0].Text("previousId").ShouldBe(events[2]);
    }

    [Fact]
    public async Task What_is_still_owed_keeps_its_event_and_all_behind_it()
    {
        await using var service = await ServiceUnderTest.Start();
        for (var line = 1; line <= 4; line++)
            await service.WorkCrest("T-3", ("line", line.ToString()));
        var events = (await service.Client.Get("/v1/events"))["items"].EnumerateArray().Select(happened => happened.Id()).ToArray();
        await service.Look(async db =>
        {
            db.Deliveries.Add(new DeliveryRow { Shop = "main", Id = "dlv_1", Event = events[1], Target = "whk_1", State = DeliveryState.Owed });
            return await db.SaveChangesAsync();
        });

        await Retain(service, days: 31);

        (await service.Client.Get("/v1/events"))["items"].EnumerateArray().Select(happened => happened.Id()).ShouldBe(events[1..]);
    }

    private static Task<bool> Retain(ServiceUnderTest service, int days) => service.Within<bool>(null, async services =>
    {
        await services.GetServices<ILoop>().OfType<RetentionLoop>().Single()
            .RunOnce(TimeProvider.System.GetUtcNow().AddDays(days), CancellationToken.None);
        return true;
    });
}
