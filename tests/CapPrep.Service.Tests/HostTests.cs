using System.Net;
using System.Text.Json;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests;

public sealed class HostTests
{
    [Theory]
    [InlineData(Store.Sqlite)]
    [InlineData(Store.Postgres)]
    public async Task The_service_starts_answers_and_stops(Store store)
    {
        Stores.SkipUnlessThere(store);
        await using var service = await ServiceUnderTest.Start(new ServiceOptions { Store = store });

        var answer = await service.Client.GetAsync("/v1/nowhere", TestContext.Current.CancellationToken);

        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await service.Look(db => Task.FromResult(db.Keys.Count()))).ShouldBeGreaterThan(0);
    }

    [Fact]
    public async Task The_executable_asks_for_a_small_heap()
    {
        var path = Path.Combine(AppContext.BaseDirectory, "capprep.runtimeconfig.json");
        using var file = JsonDocument.Parse(await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken));

        var options = file.RootElement.GetProperty("runtimeOptions").GetProperty("configProperties");

        options.GetProperty("System.GC.ConserveMemory").GetInt32().ShouldBe(5);
    }
}
