using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Layers;

/// <summary>Tape units are 0.1 mm.</summary>
public sealed class StackedLayerTests
{
    /// <summary>
    /// Row Q16: at most three layers at one spot (Thread-break column, Printwear, December 2016,
    /// http://read.uberflip.com/i/753675-december-16/35); the hold is house.
    /// </summary>
    [Theory]
    [InlineData(3, null)]
    [InlineData(4, Severity.Warn)]
    [InlineData(5, Severity.Warn)]
    [InlineData(6, Severity.Hold)]
    public void More_than_three_layers_are_a_warn_and_six_a_hold(int layers, Severity? expected) =>
        Level(draft => LayerDrafts.Fills(draft, layers)).ShouldBe(expected);

    /// <summary>A spot of 2 x 2 mm must lie under all of them.</summary>
    [Theory]
    [InlineData(30, 30, Severity.Warn)]
    [InlineData(60, 17, null)]
    public void The_spot_is_a_square_of_two_millimeters(int width, int height, Severity? expected) => Level(draft => LayerDrafts.Fills(draft, 3)
        .Layer(new(40, 40, 40 + width, 40 + height), layer: 3)).ShouldBe(expected);

    [Fact]
    public void A_thin_letter_over_three_layers_bends_away() => Level(draft => LayerDrafts.Fills(draft, 3)
        .ColorStop().Move(new(60, 30)).Sew(Column.Upright(new(60, 30), 14, 100))).ShouldBeNull();

    [Fact]
    public void Underlay_is_not_counted() => Level(draft => LayerDrafts.Fills(draft, 2)
        .ColorStop().Trim(new(0, 0)).Sew(Fill.Of(new(0, 0, 200, 150)) with { UnderlayPitch = 10 })).ShouldBeNull();

    [Fact]
    public void Open_layers_of_a_blend_are_not_counted() => Level(draft => LayerDrafts.Fills(draft, 5, rowPitch: 8)).ShouldBeNull();

    [Fact]
    public void Work_over_foam_is_not_counted() => (RuleCases.Drafted(draft => LayerDrafts.Fills(draft, 4)) with
    {
        Ticket = Job.Clean.Ticket with { Technique = Technique.Foam, Threads = null },
    }).Finding("stitch.stacked").ShouldBeNull();

    [Fact]
    public void A_place_names_the_spot_and_everything_that_lies_there()
    {
        var finding = RuleCases.Drafted(draft => LayerDrafts.Fills(draft, 3).Layer(new(40, 40, 90, 80), layer: 3)
            .Trim(new(400, 0)).Run(25, new TapePoint(400, 0), new TapePoint(400, 200))).Finding("stitch.stacked").ShouldNotBeNull();

        finding.Message.ShouldBe("4 layers of cover lie on each other; at most 3 are wanted.");
        finding.Asks.ShouldBe(Asks.Nothing);
        var place = finding.Places.ShouldHaveSingleItem();
        place.Blocks.ShouldBe([1, 2, 3, 4]);
        place.BoxMm!.Value.Width.ShouldBe(5, 0.6);
        place.BoxMm.Value.Height.ShouldBe(4, 0.6);
        place.BoxMm.Value.Bottom.ShouldBe(13 + 4.3, 0.6);
    }

    [Fact]
    public void A_hold_asks_for_the_digitizer() =>
        RuleCases.Drafted(draft => LayerDrafts.Fills(draft, 6)).Finding("stitch.stacked").ShouldNotBeNull().Asks.ShouldBe(Asks.ReturnToDigitizer);

    private static Severity? Level(Func<Draft, Draft> sew) => RuleCases.Drafted(sew).Finding("stitch.stacked")?.Severity;
}
