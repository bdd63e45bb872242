using System.Net;
using System.Net.Sockets;
using CapPrep.Service.Events;
using CapPrep.Service.Jobs;
using CapPrep.Service.Tests.Intake;
using CapPrep.TestKit.Service;
using Hangfire;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Bench;

public sealed class HangfireTests
{
    [Fact]
    public async Task The_dashboard_stands_on_the_management_listener_alone()
    {
        var port = FreePort();
        await using var service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Settings = new Dictionary<string, string?> { ["Http:ManagementUrl"] = $"http://127.0.0.1:{port}" },
        });
        using var client = new HttpClient();
        using var pretending = new HttpRequestMessage(HttpMethod.Get, new Uri(service.Address, "/dashboard"));
        pretending.Headers.Host = $"127.0.0.1:{port}";

        (await client.GetAsync($"http://127.0.0.1:{port}/dashboard")).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await client.GetAsync(new Uri(service.Address, "/dashboard"))).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await client.SendAsync(pretending)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task What_throws_in_a_queue_runs_once_and_is_forgotten_later(Store store)
    {
        Stores.SkipUnlessThere(store);
        var deliverer = new BrokenDeliverer();
        await using var service = await ServiceUnderTest.Start(new ServiceOptions
        {
            Store = store,
            Adjust = services => services.AddSingleton<IDeliverer>(deliverer),
        });
        var monitor = service.Services.GetRequiredService<JobStorage>().GetMonitoringApi();

        service.Services.GetRequiredService<IHandover>().Deliver("dlv_broken");
        await Flow.Until(() => Task.FromResult(monitor.FailedCount() == 1), "the Hangfire job fails");

        var failed = monitor.FailedJobs(0, 1).Single();
        monitor.JobDetails(failed.Key).ExpireAt.ShouldNotBeNull();
        deliverer.Calls.ShouldBe(1);
    }

    [Fact]
    public async Task A_stop_in_the_middle_of_a_job_is_no_attempt_and_the_next_start_ends_it()
    {
        var folder = Directory.CreateTempSubdirectory("capprep-test-");
        var options = new ServiceOptions { DataFolder = folder.FullName };
        var paper = new StuckPaper();
        var stopped = await ServiceUnderTest.Start(options with { Adjust = services => services.AddSingleton<IPaperMaker>(paper) });
        var id = (await stopped.Client.Post(Upload.Ticket("H-1"), Upload.Tape)).Body.Id();
        var key = stopped.Key;
        paper.Begun.Wait(TimeSpan.FromSeconds(20)).ShouldBeTrue();

        await stopped.DisposeAsync();
        paper.Torn.Set();

        await using (var next = await ServiceUnderTest.Start(options))
        {
            var job = await next.ClientWith(key).Get($"/v1/jobs/{id}", ("Prefer", "wait=20"));
            job["status"].GetString().ShouldBe("finished");
            job["attempts"].GetInt32().ShouldBe(1);
            (await next.Look(db => db.Events.CountAsync())).ShouldBe(1);
        }

        folder.Delete(recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private sealed class BrokenDeliverer : IDeliverer
    {
        private int _calls;

        public int Calls => _calls;

        public Task Deliver(string deliveryId, CancellationToken cancel)
        {
            Interlocked.Increment(ref _calls);
            throw new InvalidOperationException("The deliverer is broken.");
        }
    }

    private sealed class StuckPaper : IPaperMaker
    {
        public ManualResetEventSlim Begun { get; } = new();

        public ManualResetEventSlim Torn { get; } = new();

        public Papers Make(PreparedJob prepared)
        {
            Begun.Set();
            Torn.Wait(TimeSpan.FromSeconds(60));
            throw new InvalidOperationException("The paper is torn.");
        }
    }
}
