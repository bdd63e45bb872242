using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class StitchesHashTests
{
    [Fact]
    public void The_header_does_not_count()
    {
        var crest = TapeBuilder.Crest();

        StitchesHash.Of(crest.ToTape("NORTH")).ShouldBe(StitchesHash.Of(crest.ToTape("SOUTH")));
    }

    [Fact]
    public void One_moved_stitch_counts()
    {
        var one = TapeBuilder.Seated(400, 200).ToTape("BOX");
        var other = TapeBuilder.Seated(401, 200).ToTape("BOX");

        StitchesHash.Of(one).ShouldNotBe(StitchesHash.Of(other));
    }

    [Fact]
    public void A_stop_in_place_of_a_jump_counts()
    {
        var stop = TapeBuilder.Box(100, 100).ColorStop().Stitch(new(50, 50)).ToTape("BOX");
        var jump = TapeBuilder.Box(100, 100).Move(new(50, 50)).Stitch(new(50, 51)).ToTape("BOX");

        StitchesHash.Of(stop).ShouldNotBe(StitchesHash.Of(jump));
        StitchesHash.Of(stop).Length.ShouldBe(64);
    }
}
