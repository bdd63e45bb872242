using CapPrep.Service.Events;
using CapPrep.Service.Storage.Rows;
using CapPrep.TestKit.Service;
using Microsoft.EntityFrameworkCore;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class DeliveryTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task An_event_reaches_its_receiver_signed_and_byte_for_byte(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        var (id, secret) = await bench.AddEndpoint(receiver.Address);
        var happened = await bench.Happen();

        await bench.Round();

        var received = receiver.Calls.ShouldHaveSingleItem();
        received.Body.ShouldBe(happened.Body);
        received.Id.ShouldBe(happened.Id);
        received.Timestamp.ShouldBe(bench.Clock.GetUtcNow().ToUnixTimeSeconds().ToString());
        received.IsSignedWith(secret).ShouldBeTrue();
        received.Headers["content-type"].ShouldBe("application/json");
        received.Headers["user-agent"].ShouldBe("CapPrep/1");
        received.Headers.ShouldNotContainKey("traceparent");
        var delivery = (await bench.Deliveries()).ShouldHaveSingleItem();
        (delivery.State, delivery.NextAt, delivery.LeaseUntil).ShouldBe((DeliveryState.Delivered, null, null));
        var attempt = (await bench.Attempts()).ShouldHaveSingleItem();
        (attempt.Number, attempt.Outcome, attempt.Status, attempt.Address).ShouldBe((1, "delivered", 204, $"127.0.0.1:{receiver.Port}"));
        (await bench.Endpoint(id)).State.ShouldBe(EndpointState.On);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task After_503_it_is_sent_again_at_the_times_of_the_schedule_with_the_same_id_and_body(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        receiver.Tell(Reply.Of(503, "busy"), Reply.Of(503, "busy"));
        var (id, secret) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();

        await bench.Round();
        await bench.Round(TimeSpan.FromSeconds(4.9));
        receiver.Calls.Count.ShouldBe(1);
        (await bench.Endpoint(id)).State.ShouldBe(EndpointState.Paused);
        await bench.Round(TimeSpan.FromSeconds(0.1));
        receiver.Calls.Count.ShouldBe(2);
        await bench.Round(TimeSpan.FromSeconds(59));
        receiver.Calls.Count.ShouldBe(2);
        await bench.Round(TimeSpan.FromSeconds(1));

        receiver.Calls.Count.ShouldBe(3);
        receiver.Calls.ShouldAllBe(request => request.IsSignedWith(secret));
        receiver.Calls.Select(request => request.Timestamp).Distinct().Count().ShouldBe(3);
        receiver.Ledger.Ids.ShouldHaveSingleItem();
        receiver.Ledger.Faults().ShouldBeEmpty();
        (await bench.Attempts()).Select(attempt => (attempt.Number, attempt.Outcome, attempt.Status, attempt.Excerpt))
            .ShouldBe([(1, "refused", 503, "busy"), (2, "refused", 503, "busy"), (3, "delivered", 204, "")]);
        var endpoint = await bench.Endpoint(id);
        (endpoint.State, endpoint.PausedUntil, endpoint.FailingSince).ShouldBe((EndpointState.On, null, null));
    }

    [Theory]
    [InlineData(429)]
    [InlineData(503)]
    public async Task A_receiver_that_asks_for_an_hour_gets_an_hour(int status)
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        receiver.Tell(Reply.Later(status, 3600));
        await bench.AddEndpoint(receiver.Address);
        await bench.Happen();

        await bench.Round();
        await bench.Round(TimeSpan.FromSeconds(3599));
        receiver.Calls.Count.ShouldBe(1);
        await bench.Round(TimeSpan.FromSeconds(1));

        receiver.Calls.Count.ShouldBe(2);
        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.Delivered);
    }

    [Fact]
    public async Task After_the_last_attempt_a_delivery_is_given_up()
    {
        await using var bench = await WebhookBench.Start(settings: new() { ["Webhooks:WaitsSeconds"] = "0,5,5" });
        await using var receiver = await Receiver.Start();
        receiver.Usually = Reply.Of(500);
        await bench.AddEndpoint(receiver.Address);
        await bench.Happen();

        for (var i = 0; i < 10; i++)
            await bench.Round(TimeSpan.FromSeconds(5));

        receiver.Calls.Count.ShouldBe(3);
        var delivery = (await bench.Deliveries()).Single();
        (delivery.State, delivery.NextAt, delivery.Attempts).ShouldBe((DeliveryState.GivenUp, null, 3));
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task A_receiver_that_is_gone_is_switched_off_and_the_others_are_told(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        receiver.Tell(Reply.Of(410));
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        await bench.Happen();

        await bench.Round();
        await bench.Round(TimeSpan.FromDays(1));

        receiver.Calls.Count.ShouldBe(1);
        (await bench.Endpoint(id)).State.ShouldBe(EndpointState.SwitchedOff);
        (await bench.Deliveries()).ShouldAllBe(delivery => delivery.State == DeliveryState.GivenUp);
        (await bench.Attempts()).Single().Status.ShouldBe(410);
        var warning = await bench.Service.Look(db => db.Events.SingleAsync(row => row.Type == EventTypes.EndpointWarning, Cancel));
        System.Text.Encoding.UTF8.GetString(warning.Body).ShouldContain($"\"endpoint\":\"{id}\",\"url\":\"http://127.0.0.1:{receiver.Port}/\",\"state\":\"switchedOff\",\"reason\":\"gone\"");
    }

    [Fact]
    public async Task A_redirect_is_a_failure_and_is_not_followed()
    {
        await using var bench = await WebhookBench.Start();
        await using var elsewhere = await Receiver.Start();
        await using var receiver = await Receiver.Start();
        receiver.Tell(new Reply { Status = 307, Headers = new Dictionary<string, string> { ["Location"] = elsewhere.Address.AbsoluteUri } });
        await bench.AddEndpoint(receiver.Address);
        await bench.Happen();

        await bench.Round();

        elsewhere.Calls.ShouldBeEmpty();
        var attempt = (await bench.Attempts()).Single();
        (attempt.Status, attempt.Outcome).ShouldBe((307, "redirect"));
        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.Owed);
    }

    [Fact]
    public async Task An_answer_that_was_not_written_down_comes_again_with_the_same_id_and_body()
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        await bench.AddEndpoint(receiver.Address);
        var happened = await bench.Happen();
        await bench.Round();
        // As a kill between sending and recording leaves it: claimed by a process that is no more, nothing recorded.
        await bench.Service.Look(async db =>
        {
            await db.Attempts.ExecuteDeleteAsync(Cancel);
            return await db.Deliveries.ExecuteUpdateAsync(
                set => set
                    .SetProperty(row => row.State, DeliveryState.Owed)
                    .SetProperty(row => row.NextAt, happened.At)
                    .SetProperty(row => row.LeaseHolder, "gone")
                    .SetProperty(row => row.LeaseUntil, bench.Clock.GetUtcNow().AddSeconds(50)),
                Cancel);
        });

        await bench.Round();
        receiver.Calls.Count.ShouldBe(1);
        await bench.Round(TimeSpan.FromSeconds(51));

        receiver.Ledger.TimesSeen(happened.Id).ShouldBe(2);
        receiver.Ledger.Faults([happened.Id]).ShouldBeEmpty();
        (await bench.Attempts()).Single().Number.ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Who_lost_a_delivery_to_another_process_writes_nothing_down(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        receiver.Answer = async (_, context) =>
        {
            await bench.Service.Look(db => db.Deliveries.ExecuteUpdateAsync(set => set.SetProperty(row => row.Fence, row => row.Fence + 1), Cancel));
            await Reply.Of(500).Send(context);
        };

        await bench.Round();

        receiver.Calls.ShouldHaveSingleItem();
        (await bench.Attempts()).ShouldBeEmpty();
        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.Owed);
        (await bench.Endpoint(id)).State.ShouldBe(EndpointState.On);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Two_workers_with_one_delivery_make_one_call(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Delay = TimeSpan.FromMilliseconds(200) };
        await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        var delivery = (await bench.Deliveries()).Single().Id;

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => bench.Deliver(delivery)));

        receiver.Calls.Count.ShouldBe(1);
        (await bench.Attempts()).Length.ShouldBe(1);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task The_trace_of_the_job_goes_along(Store store)
    {
        const string Trace = "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01";
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        await bench.AddEndpoint(receiver.Address);
        await bench.Service.Look(async db =>
        {
            db.Jobs.Add(SomeJob.With("job_1", Trace));
            return await db.SaveChangesAsync(Cancel);
        });
        await bench.Happen(job: "job_1");

        await bench.Round();

        receiver.Calls.Single().Headers["traceparent"].ShouldBe(Trace);
    }

    [Fact]
    public async Task What_a_removed_endpoint_was_owed_ends_as_given_up()
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        var early = (await bench.Deliveries()).Single();
        (await bench.Service.Client.DeleteAsync($"/v1/webhooks/{id}", Cancel)).EnsureSuccessStatusCode();
        // As a commit leaves it that read the endpoints just before one was removed.
        await bench.Service.Look(db => db.Deliveries.ExecuteUpdateAsync(set => set
            .SetProperty(row => row.State, DeliveryState.Owed).SetProperty(row => row.NextAt, bench.Clock.GetUtcNow()), Cancel));

        await bench.Deliver(early.Id);

        receiver.Calls.ShouldBeEmpty();
        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.GivenUp);
    }

    [Fact]
    public async Task What_arrives_while_its_endpoint_is_removed_counts_as_delivered()
    {
        await using var bench = await WebhookBench.Start();
        await using var receiver = await Receiver.Start();
        receiver.Usually = new Reply { Delay = TimeSpan.FromMilliseconds(500) };
        var (id, _) = await bench.AddEndpoint(receiver.Address);
        await bench.Happen();

        var delivering = bench.Round();
        await receiver.Until(1);
        (await bench.Service.Client.DeleteAsync($"/v1/webhooks/{id}", Cancel)).EnsureSuccessStatusCode();
        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.GivenUp);
        await delivering;

        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.Delivered);
        (await bench.Attempts()).Single().Outcome.ShouldBe("delivered");
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task Orphans_that_nobody_hands_over_are_given_up_by_the_loop(Store store)
    {
        await using var bench = await WebhookBench.Start(store);
        await using var receiver = await Receiver.Start();
        await bench.AddEndpoint(receiver.Address);
        await bench.Happen();
        await bench.Service.Look(db => db.Endpoints.ExecuteDeleteAsync(Cancel));

        (await bench.RunLoop()).ShouldBeEmpty();

        (await bench.Deliveries()).Single().State.ShouldBe(DeliveryState.GivenUp);
    }
}
