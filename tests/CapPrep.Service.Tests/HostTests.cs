using System.Net;
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
}
