using CapPrep.Service.Plumbing;
using CapPrep.TestKit.Campaigns;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Campaigns;

/// <summary>The short form of the kill campaign: every checkpoint once on each store, and a few random moments.</summary>
public sealed class KillTests
{
    public static TheoryData<Store, string> Checkpointed()
    {
        var rows = new TheoryData<Store, string>();
        foreach (var store in new[] { Store.Sqlite, Store.Postgres })
        {
            foreach (var point in Checkpoints.All)
                rows.Add(store, point);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Checkpointed))]
    public async Task A_kill_at_a_checkpoint_loses_nothing_and_doubles_nothing(Store store, string point)
    {
        Stores.SkipUnlessThere(store);

        (await KillCampaign.Once(new Kill(store, point, null))).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(90)]
    [InlineData(250)]
    [InlineData(600)]
    public async Task A_kill_at_any_moment_loses_nothing_and_doubles_nothing(int milliseconds) =>
        (await KillCampaign.Once(new Kill(Store.Sqlite, null, TimeSpan.FromMilliseconds(milliseconds)))).ShouldBeEmpty();

    [Fact]
    public async Task A_kill_in_the_middle_of_two_hundred_jobs_from_both_doors_loses_nothing_and_doubles_nothing() =>
        (await KillCampaign.Once(new Kill(Store.Sqlite, Checkpoints.ResultCommitted + ":100", null) { Requests = 100, Pairs = 101 })).ShouldBeEmpty();
}
