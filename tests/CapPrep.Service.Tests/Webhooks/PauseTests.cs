using System.Text.Json;
using CapPrep.Service.Events;
using CapPrep.Service.Storage.Rows;
using CapPrep.Service.Webhooks;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class PauseTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_dead_receiver_gets_one_probe_at_a_time_and_everything_once_it_is_back(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        receiver.Usually = Reply.Of(500);
        await bench.AddEndpoint(receiver.Address);
        for (var i = 0; i < 30; i++)
            await bench.Happen();

        await bench.Round();
        var first = receiver.Calls.Count;
        first.ShouldBe(1);
        await bench.Round(TimeSpan.FromSeconds(5));
        await bench.Round(TimeSpan.FromSeconds(60));
        receiver.Calls.Count.ShouldBe(3);

        receiver.Usually = Reply.Ok;
        await bench.Round(TimeSpan.FromMinutes(5));
        await bench.Round(TimeSpan.FromMinutes(5));

        (await bench.Deliveries()).ShouldAllBe(delivery => delivery.State == DeliveryState.Delivered);
        receiver.Ledger.Ids.Count.ShouldBe(30);
        receiver.Ledger.Faults().ShouldBeEmpty();
    }

    [Fact]
    public async Task An_event_that_a_receiver_cannot_take_does_not_hold_up_the_others_for_long()
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        receiver.Tell(Reply.Of(400));
        await bench.AddEndpoint(receiver.Address);
        var poison = await bench.Happen();
        await bench.Round();
        var others = new List<EventRow>();
        for (var i = 0; i < 5; i++)
            others.Add(await bench.Happen());

        await bench.Round(TimeSpan.FromSeconds(5));

        var seen = receiver.Calls.Skip(1).Select(request => request.Id).ToArray();
        seen[..5].ShouldBe(others.Select(row => row.Id), ignoreOrder: true);
        seen[^1].ShouldBe(poison.Id);
    }

    [Fact]
    public async Task One_dead_endpoint_leaves_the_others_alone()
    {
        await using var bench = await WebhookBench.Start();
        await using var dead = await Receiver.Start();
        await using var alive = await Receiver.Start();
        dead.Usually = Reply.Of(500);
        await bench.AddEndpoint(dead.Address);
        await bench.AddEndpoint(alive.Address);
        for (var i = 0; i < 20; i++)
            await bench.Happen();

        await bench.Round();

        alive.Ledger.Ids.Count.ShouldBe(20);
        dead.Calls.Count.ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_burst_goes_out_in_no_more_lanes_than_allowed_each_event_once(Store store)
    {
        await using var bench = await WebhookBench.Start(store, new() { ["Webhooks:PerEndpoint"] = "2" });
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Delay = TimeSpan.FromMilliseconds(30) };
        await bench.AddEndpoint(receiver.Address);
        var owed = new List<string>();
        for (var i = 0; i < 20; i++)
            owed.Add((await bench.Happen()).Id);

        await Task.WhenAll((await bench.Deliveries()).Select(delivery => bench.Deliver(delivery.Id)));
        await bench.Round();

        receiver.MostAtOnce.ShouldBeInRange(1, 2);
        receiver.Calls.Count.ShouldBe(20);
        receiver.Ledger.Faults(owed).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Failures_at_the_same_moment_pause_once_and_lose_nothing(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Status = 503, Delay = TimeSpan.FromMilliseconds(100) };
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        for (var i = 0; i < 8; i++)
            await bench.Happen();

        await Task.WhenAll((await bench.Deliveries()).Select(delivery => bench.Deliver(delivery.Id)));

        receiver.Calls.Count.ShouldBeLessThanOrEqualTo(4);
        (await bench.Attempts()).Length.ShouldBe(receiver.Calls.Count);
        (await bench.Endpoint(id)).PausedUntil.ShouldBe(bench.Clock.GetUtcNow().AddSeconds(5));
    }

    [Fact]
    public async Task A_probe_that_dies_is_followed_by_another_when_its_lease_ends()
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        receiver.Tell(Reply.Of(503));
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        await bench.Round();
        bench.Clock.Advance(TimeSpan.FromSeconds(5));
        var took = await bench.Service.Within(null, services => services.GetRequiredService<EndpointHealth>()
            .TakeProbe(id, bench.Clock.GetUtcNow(), TimeSpan.FromSeconds(50), Cancel));

        took.ShouldBeTrue();
        await bench.Round(TimeSpan.FromSeconds(49));
        receiver.Calls.Count.ShouldBe(1);
        await bench.Round(TimeSpan.FromSeconds(1));
        receiver.Calls.Count.ShouldBe(2);
    }

    [Fact]
    public async Task The_loop_hands_over_a_few_of_each_endpoint_and_none_twice()
    {
        await using var bench = await WebhookBench.Start(settings: new() { ["Webhooks:PerEndpoint"] = "2" });
        await using var receiver = await Receiver.Start();
        await bench.AddEndpoint(receiver.Address);
        await bench.AddEndpoint(receiver.Address);
        for (var i = 0; i < 10; i++)
            await bench.Happen();

        (await bench.RunLoop()).Count.ShouldBe(4);
        (await bench.RunLoop()).Count.ShouldBe(4);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Before_its_time_is_up_an_endpoint_is_warned_of_and_then_it_is_switched_off(Store store)
    {
        await using var bench = await WebhookBench.Start(store, settings: new() { ["Webhooks:SwitchOffAfterHours"] = "100" });
        await using var receiver = await Receiver.Start();
        receiver.Usually = Reply.Of(500);
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        await bench.Round();

        for (var hour = 0; hour < 101; hour++)
            await bench.Round(TimeSpan.FromHours(1));

        var bodies = await bench.Service.Look(db => db.Events
            .Where(row => row.Type == EventTypes.EndpointWarning).OrderBy(row => row.Position).Select(row => row.Body).ToArrayAsync(Cancel));
        var data = bodies.Select(body => JsonDocument.Parse(body).RootElement.GetProperty("data")).ToArray();
        data.Select(warning => warning.GetProperty("spentPercent").GetInt32()).ShouldBe([50, 70, 90, 100]);
        data.Select(warning => warning.GetProperty("state").GetString()).ShouldBe(["paused", "paused", "paused", "switchedOff"]);
        (await bench.Endpoint(id)).State.ShouldBe(EndpointState.SwitchedOff);
        (await bench.Deliveries()).ShouldAllBe(delivery => delivery.State == DeliveryState.GivenUp);
        receiver.Calls.Count.ShouldBeLessThanOrEqualTo(12);
    }
}
