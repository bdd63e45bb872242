using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class TrimMovesTests
{
    private static readonly TrimMoves Three = new(3, TrimPattern.OutAndBack, 121, CenterX: 1000);

    [Fact]
    public void A_cut_is_spread_over_the_machines_jumps_and_lands_on_the_next_stitch() =>
        Three.Between(new(0, 0), new(-100, 50)).ShouldBe(
        [
            // Shares rounded toward minus infinity: -100/3 = -33.3 ends at -34, -66.7 at -67.
            new(RecordKind.Jump, new(-34, 16)),
            new(RecordKind.Jump, new(-67, 33)),
            new(RecordKind.Jump, new(-100, 50)),
            new(RecordKind.Stitch, new(-100, 50)),
        ]);

    [Fact]
    public void A_long_cut_takes_as_many_jumps_as_its_longer_axis_needs() =>
        Three.Between(new(0, 0), new(10, 500)).Count(move => move.Kind == RecordKind.Jump).ShouldBe(5);

    [Fact]
    public void A_cut_shorter_than_its_jumps_goes_out_toward_the_center_and_back() =>
        Three.Between(new(0, 0), new(0, 2)).ShouldBe(
        [
            new(RecordKind.Jump, new(10, 0)),
            new(RecordKind.Jump, new(5, 1)),
            new(RecordKind.Jump, new(0, 2)),
            new(RecordKind.Stitch, new(0, 2)),
        ]);

    [Fact]
    public void A_short_cut_may_be_spread_when_the_machine_wants_it() =>
        (Three with { Pattern = TrimPattern.Spread }).Between(new(0, 0), new(0, 2)).Select(move => move.To)
            .ShouldBe([new(0, 0), new(0, 1), new(0, 2), new(0, 2)]);

    [Fact]
    public void Out_and_back_never_leaves_a_jump_without_a_move() => Gen.Select(
        Gen.Int[1, 10], Gen.Int[-9, 9], Gen.Int[-9, 9], Gen.Int[-5, 5]).Sample(
        (jumps, dx, dy, center) =>
        {
            var moves = new TrimMoves(jumps, TrimPattern.OutAndBack, 121, center).Between(new(0, 0), new(dx, dy)).ToList();
            var at = TapePoint.Origin;
            foreach (var jump in moves.Where(move => move.Kind == RecordKind.Jump))
            {
                jump.To.ShouldNotBe(at);
                at = jump.To;
            }

            moves.Count.ShouldBeGreaterThan(jumps);
            moves[^1].ShouldBe(new(RecordKind.Stitch, new(dx, dy)));
            at.ShouldBe(new(dx, dy));
        },
        iter: 1000,
        seed: "0N0XIzNsQ0O2");

    [Theory]
    [InlineData(0, 121, 1)]
    [InlineData(121, 121, 1)]
    [InlineData(122, 121, 2)]
    [InlineData(250, 121, 3)] // 25 mm at 12.1 mm a record (EduTech Wiki, "Embroidery format DST")
    public void A_way_takes_the_fewest_records(int reach, int maxMove, int records) =>
        MoveSplit.Within(new(5, 5), new(5 - reach, 5), maxMove).Count.ShouldBe(records);
}
