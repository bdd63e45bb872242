using CapPrep.Engine.Measures;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Revisions;

/// <summary>On random designs: what is no change is never told, and what is one always is.</summary>
public sealed class RevisionProperties
{
    private const int Designs = 20;

    [Fact]
    public void Shifting_and_rounding_change_nothing()
    {
        for (var number = 1; number <= Designs; number++)
        {
            var chance = new Chance((ulong)number);
            var tape = RandomDesign.Of(number, most: 14).Draft.ToTape("TEST");
            var shift = new TapePoint(chance.From(-50, 50), chance.From(-50, 50));
            var again = Revised.Shifted(tape, _ => shift + new TapePoint(chance.From(0, 1), chance.From(0, 1)));

            Outside(tape, again).ShouldBeEmpty($"design {number}");
        }
    }

    [Fact]
    public void Our_own_order_is_no_change_of_stitches()
    {
        for (var number = 1; number <= Designs; number++)
        {
            var tape = RandomDesign.Of(number, most: 14).Draft.ToTape("TEST");
            if ((Job.Clean with { Tape = tape }).Prepare().ProposedTape is { } proposed)
                Outside(tape, Stitched.Read(proposed)).ShouldBeEmpty($"design {number}");
        }
    }

    [Fact]
    public void A_needle_point_that_was_moved_by_2_mm_is_told_and_nothing_else_is()
    {
        for (var number = 1; number <= Designs; number++)
        {
            var tape = RandomDesign.Of(number, most: 14).Draft.ToTape("TEST");
            var element = (Job.Clean with { Tape = tape }).Prepare().Reading.Elements.MaxBy(one => one.Penetrations)!;
            var record = StitchSequence.Of(tape, 3).Record[element.First + (element.Penetrations / 2)];

            var told = Outside(tape, Revised.Shifted(tape, at => at == record ? new(0, -20) : TapePoint.Origin));

            told.Where(change => change.What != OutsideKind.Size).ShouldHaveSingleItem($"design {number}").Element.ShouldBe(element.Index + 1, $"design {number}");
        }
    }

    private static IReadOnlyList<OutsideChange> Outside(Tape before, Tape after) => Revised.Report(before, after).ChangedOutside;
}
