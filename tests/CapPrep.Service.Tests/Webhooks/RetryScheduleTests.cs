using CapPrep.Service.Plumbing;
using CapPrep.Service.Webhooks;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class RetryScheduleTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 8, 0, 0, TimeSpan.Zero);
    private static readonly RetrySchedule Standard = new(SettingsReader.StandardWaits);
    private static readonly Gen<double> Jitter = Gen.Double[0, 1];

    [Fact]
    public void Twelve_attempts_reach_over_at_least_96_hours_whatever_the_jitter() => Jitter.Array[11].Sample(jitters =>
    {
        var at = Now;
        for (var made = 1; made < 12; made++)
            at = Standard.Next(made, at, null, jitters[made - 1])!.Value;
        Standard.Next(12, at, null, 0).ShouldBeNull();
        (at - Now).ShouldBeGreaterThanOrEqualTo(TimeSpan.FromHours(96));
        (at - Now).ShouldBeLessThanOrEqualTo(TimeSpan.FromHours(96.6 * 1.2));
    });

    [Fact]
    public void A_wait_is_never_shorter_and_at_most_a_fifth_longer() =>
        Gen.Select(Gen.Int[1, 11], Jitter).Sample((made, jitter) =>
        {
            var wait = (Standard.Next(made, Now, null, jitter)!.Value - Now).TotalSeconds;
            wait.ShouldBeInRange(SettingsReader.StandardWaits[made], SettingsReader.StandardWaits[made] * 1.2);
        });

    [Fact]
    public void Later_attempts_more_jitter_and_longer_wishes_never_come_sooner() =>
        Gen.Select(Gen.Int[1, 10], Jitter, Jitter, Gen.Int[0, 200_000], Gen.Int[0, 200_000]).Sample((made, one, other, wish, longer) =>
        {
            var (low, high) = (Math.Min(one, other), Math.Max(one, other));
            var (few, many) = (TimeSpan.FromSeconds(Math.Min(wish, longer)), TimeSpan.FromSeconds(Math.Max(wish, longer)));
            var at = Standard.Next(made, Now, few, low)!.Value;
            Standard.Next(made, Now, few, high)!.Value.ShouldBeGreaterThanOrEqualTo(at);
            Standard.Next(made, Now, many, low)!.Value.ShouldBeGreaterThanOrEqualTo(at);
            Standard.Next(made + 1, Now, few, low)!.Value.ShouldBeGreaterThanOrEqualTo(at);
        });

    [Theory]
    [InlineData(120, 120)]
    [InlineData(3, 5)]
    [InlineData(-10, 5)]
    [InlineData(86_400, 86_400)]
    [InlineData(900_000, 86_400)]
    public void The_receivers_wish_is_honored_up_to_24_hours(int wish, int wanted) =>
        (Standard.Next(1, Now, TimeSpan.FromSeconds(wish), 0)!.Value - Now).ShouldBe(TimeSpan.FromSeconds(wanted));

    [Theory]
    [InlineData(0, 5)]
    [InlineData(5, 65)]
    [InlineData(64, 65)]
    [InlineData(65, 365)]
    [InlineData(347_759, 347_765)]
    [InlineData(347_765, 434_165)]
    public void An_endpoint_is_left_alone_until_the_next_time_of_the_schedule(int failingFor, int wanted)
    {
        var until = Standard.PausedUntil(Now, Now.AddSeconds(failingFor), null);

        (until - Now).ShouldBe(TimeSpan.FromSeconds(wanted));
    }

    [Fact]
    public void A_pause_ends_after_now_and_never_sooner_for_a_later_failure() =>
        Gen.Select(Gen.Int[0, 500_000], Gen.Int[0, 500_000]).Sample((one, other) =>
        {
            var (early, late) = (Now.AddSeconds(Math.Min(one, other)), Now.AddSeconds(Math.Max(one, other)));
            Standard.PausedUntil(Now, early, null).ShouldBeGreaterThan(early);
            Standard.PausedUntil(Now, late, null).ShouldBeGreaterThanOrEqualTo(Standard.PausedUntil(Now, early, null));
        });
}
