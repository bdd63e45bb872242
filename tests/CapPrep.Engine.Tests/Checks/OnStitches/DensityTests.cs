using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Limits are common practice, no source. Tape units are 0.1 mm.</summary>
public sealed class DensityTests
{
    /// <summary>6.25, 7.1, 8.3, 11.1, 12.5, 20 and 25 holes per square millimeter.</summary>
    [Theory]
    [InlineData(4, 4, null)]
    [InlineData(2, 7, null)]
    [InlineData(3, 4, Severity.Note)]
    [InlineData(3, 3, Severity.Note)]
    [InlineData(2, 4, Severity.Warn)]
    [InlineData(1, 5, Severity.Warn)]
    [InlineData(1, 4, Severity.Hold)]
    [InlineData(2, 2, Severity.Hold)]
    public void Holes_pass_one_limit_after_the_other(int dx, int dy, Severity? expected) =>
        Level(new Draft().Grid(dx, dy, 80, 80)).ShouldBe(expected);

    /// <summary>25 holes per square millimeter, 2 mm high: on 10 mm are four windows in a row, on 4.9 mm not.</summary>
    [Theory]
    [InlineData(100, Severity.Hold)]
    [InlineData(49, Severity.Warn)]
    public void Four_neighboring_windows_are_a_hold_and_fewer_a_warn(int length, Severity expected) =>
        Level(new Draft().Run(25, new TapePoint(-length, 9), new TapePoint(-1, 9)).Grid(2, 2, length, 20)).ShouldBe(expected);

    [Fact]
    public void One_window_alone_is_not_enough() => Level(new Draft().Grid(3, 4, 20, 20)).ShouldBeNull();

    [Fact]
    public void A_hole_met_again_is_one_hole() =>
        Level(new Draft().Grid(4, 4, 80, 80).Trim(new(0, 0)).Grid(4, 4, 80, 80)).ShouldBeNull();

    [Fact]
    public void Layers_add_up() =>
        Level(new Draft().Grid(4, 4, 80, 80).ColorStop().Trim(new(2, 2)).Grid(4, 4, 80, 80, 2, 2)).ShouldBe(Severity.Warn);

    [Fact]
    public void Foam_is_sewn_dense_on_purpose() => Dense(Technique.Foam, foam: null).Finding("stitch.dense").ShouldBeNull();

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, Severity.Hold)]
    public void A_thread_over_foam_is_left_out(bool foam, Severity? expected) =>
        (Dense(Technique.PartFoam, foam).Finding("stitch.dense")?.Severity).ShouldBe(expected);

    [Fact]
    public void Ties_of_one_element_do_not_count()
    {
        var tied = new Draft().Stitch(new(0, 0));
        foreach (var toward in new TapePoint[] { new(90, 10), new(80, 40), new(50, 70), new(20, 90) })
            tied.Tie(toward);

        Level(tied.Grid(4, 4, 80, 80)).ShouldBe(Level(new Draft().Grid(4, 4, 80, 80)));
    }

    [Fact]
    public void A_place_names_box_blocks_and_stitches()
    {
        var finding = RuleCases.Drafted(draft => draft
            .Run(25, At(-200, 0), At(-100, 0)).Grid(2, 2, 80, 80, -40, 200).Run(25, At(80, 278), At(200, 278), At(200, 0)))
            .Finding("stitch.dense").ShouldNotBeNull();

        finding.Count.ShouldBe(1);
        finding.Asks.ShouldBe(Asks.ReturnToDigitizer);
        finding.Message.ShouldBe("1 spot has 25 needle holes per square millimeter; at most 20 are wanted.");
        var place = finding.Places.ShouldHaveSingleItem();
        place.Blocks.ShouldBe([1]);
        place.Stitches.ShouldBe(new StitchRange(6, 1605));
        place.BoxMm!.Value.Left.ShouldBe(-4, 1.2);
        place.BoxMm.Value.Right.ShouldBe(4, 1.2);
        place.BoxMm.Value.Bottom.ShouldBe(33, 1.2);
        place.BoxMm.Value.Top.ShouldBe(41, 1.2);
    }

    [Fact]
    public void Spots_that_only_pass_a_milder_limit_are_counted_apart()
    {
        var finding = RuleCases.Drafted(draft => draft
            .Grid(2, 2, 80, 80).Trim(At(200, 0)).Grid(3, 3, 80, 80, 200).Trim(At(400, 0)).Grid(3, 3, 80, 80, 400))
            .Finding("stitch.dense").ShouldNotBeNull();

        finding.Count.ShouldBe(3);
        finding.Message.ShouldBe(
            "1 spot has 25 needle holes per square millimeter; at most 20 are wanted. 2 more have over 8.");
    }

    private static Job Dense(Technique technique, bool? foam) => RuleCases.Drafted(draft => draft.Grid(2, 2, 80, 80)) with
    {
        Ticket = Job.Clean.Ticket with
        {
            Technique = technique,
            Threads = [new TicketThread { Block = 1, Name = "Navy", Foam = foam }],
        },
    };

    private static TapePoint At(int x, int y) => new(x, y);

    private static Severity? Level(Draft draft) => RuleCases.Drafted(_ => draft).Finding("stitch.dense")?.Severity;
}
