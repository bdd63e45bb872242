using CapPrep.Engine.Checks.OnCap.Front;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnCap.Front;

public sealed class TurnsAwayTests
{
    /// <summary>100 needle points 1 mm apart about the seam; so many of them farther out than 50 mm.</summary>
    [Theory]
    [InlineData(20, null)]
    [InlineData(22, Severity.Note)]
    public void A_fifth_of_the_stitches_may_turn_away(int away, Severity? expected) =>
        (Line(away).Finding("place.turns-away")?.Severity).ShouldBe(expected);

    [Fact]
    public void Sides_are_not_looked_at_from_the_front() => (Job.Clean with
    {
        Tape = Stitched.Seated(1200, 250),
        Frame = Job.FrameOf("flat-clamp"),
        Ticket = Job.Clean.Ticket with { Location = CapLocation.Left },
    }).Finding("place.turns-away").ShouldBeNull();

    [Fact]
    public void A_wrap_is_meant_to_go_around() => (Job.Clean with
    {
        Tape = Stitched.Seated(1200, 250),
        Style = Job.Clean.Style! with { Zones = [.. Job.Clean.Style.Zones, Job.Clean.Style.Zones[0] with { Location = CapLocation.Wrap }] },
        Ticket = Job.Clean.Ticket with { Location = CapLocation.Wrap },
    }).Finding("place.turns-away").ShouldBeNull();

    /// <summary>Row W30: an arc of 100 mm on a circumference of 580 mm has a chord of 95.18 mm (arithmetic).</summary>
    [Fact]
    public void An_arc_of_100_mm_looks_like_its_chord() =>
        TurnsAway.LooksMm(100, Job.Clean.Style! with { CircumferenceMm = 580 }).ShouldBe(95.18, 0.005);

    [Fact]
    public void No_arc_looks_wider_than_the_cap() =>
        TurnsAway.LooksMm(400, Job.Clean.Style! with { CircumferenceMm = 580 }).ShouldBe(580 / Math.PI, 1e-9);

    [Fact]
    public void The_desk_learns_how_wide_it_looks() => (Job.Clean with { Tape = Stitched.Seated(1200, 300) }).Finding("place.turns-away").ShouldNotBeNull()
        .Message.ShouldEndWith("of the stitches lie over 50 mm from the middle and turn away. From the front 120 mm look like 112 mm.");

    /// <summary>Half of them to each side: the outer ones 51 mm and more from the seam.</summary>
    private static Job Line(int away)
    {
        var half = Enumerable.Range(0, 50).Select(k => k < 50 - (away / 2) ? 10 * (k + 1) : 510 + (10 * k)).ToArray();
        int[] xs = [.. half.Reverse().Select(x => -x), .. half];
        return Job.Clean with { Tape = Stitched.Of(xs.Select(x => new TapeMove(RecordKind.Stitch, new(x, 0)))) };
    }
}
