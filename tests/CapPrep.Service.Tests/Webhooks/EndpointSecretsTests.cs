using CapPrep.Service.Webhooks;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class EndpointSecretsTests
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 8, 0, 0, TimeSpan.Zero);
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    [Fact]
    public void The_old_secret_lives_until_the_overlap_ends()
    {
        var rotated = First().Rotated("whsec_bbbb", Now, Day);

        rotated.Live(Now.AddHours(23)).Select(secret => secret.Text).ShouldBe(["whsec_aaaa", "whsec_bbbb"]);
        rotated.Live(Now.AddHours(24)).Select(secret => secret.Text).ShouldBe(["whsec_bbbb"]);
    }

    [Fact]
    public void Without_overlap_the_old_secret_ends_at_once() =>
        First().Rotated("whsec_bbbb", Now, TimeSpan.Zero).Select(secret => secret.Text).ShouldBe(["whsec_bbbb"]);

    [Fact]
    public void A_second_rotation_does_not_lengthen_the_life_of_the_first_secret()
    {
        var rotated = First().Rotated("whsec_bbbb", Now, Day).Rotated("whsec_cccc", Now.AddHours(1), Day);

        rotated[0].Ends.ShouldBe(Now + Day);
        rotated[1].Ends.ShouldBe(Now.AddHours(25));
        rotated[2].Ends.ShouldBeNull();
    }

    [Fact]
    public void At_most_five_secrets_sign_and_the_oldest_go_first()
    {
        var list = First();
        for (var i = 0; i < 9; i++)
            list = list.Rotated($"whsec_000{i}", Now, Day);

        list.Select(secret => secret.Text[^1]).ShouldBe(['4', '5', '6', '7', '8']);
    }

    [Fact]
    public void A_hint_shows_the_last_four_characters_only() => First()[0].Hint.ShouldBe("whsec_…aaaa");

    private static IReadOnlyList<EndpointSecret> First() => [new EndpointSecret("whsec_aaaa", Now.AddDays(-9), null)];
}
