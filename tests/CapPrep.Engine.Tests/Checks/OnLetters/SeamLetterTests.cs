using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

public sealed class SeamLetterTests
{
    private const string Rule = "seam.small-text";

    private static readonly Job OnOrigin = Job.Clean.Seating(new TicketSeating { CenterBy = SeatingCenter.Origin });

    private static readonly TextToSew Stems = new("III") { XHeight = 39, StrokeWidth = 10, Gap = 20 };

    [Fact]
    public void A_stem_on_the_seam_warns_with_its_box_and_height()
    {
        var lettered = OnSeam(Stems);

        var finding = lettered.Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Warn);
        finding.Message.ShouldBe("A letter of 5.4 mm has its strokes on the center seam, which swallows it.");
        finding.Places.ShouldHaveSingleItem().BoxMm.ShouldBe(lettered.Subject().TextLines[0].Glyphs[1].Box.ToMillimeters());
    }

    [Theory]
    [InlineData(46, null)]
    [InlineData(45, Severity.Warn)]
    public void From_6_4_mm_a_letter_reads_on_the_seam(int xHeight, Severity? expected) =>
        OnSeam(Stems with { XHeight = xHeight }).Level(Rule).ShouldBe(expected);

    [Fact]
    public void An_even_number_of_letters_with_the_gap_on_the_seam_is_good_work() =>
        OnSeam(new TextToSew("HEEH") { XHeight = 39, StrokeWidth = 10, Gap = 8 }).Level(Rule).ShouldBeNull();

    [Theory]
    [InlineData(2, null)]
    [InlineData(3, Severity.Warn)]
    public void The_gap_must_leave_room_on_both_sides_of_the_seam(int aside, Severity? expected) =>
        OnSeam(new TextToSew("IIII") { XHeight = 39, StrokeWidth = 10, Gap = 8, Middle = new(aside, 0) }).Level(Rule).ShouldBe(expected);

    [Fact]
    public void A_letter_that_stands_across_the_seam_is_met_by_it() =>
        OnSeam(new TextToSew("OOO") { XHeight = 39, StrokeWidth = 8 }).Level(Rule).ShouldBe(Severity.Warn);

    [Theory]
    [InlineData(10, null)]
    [InlineData(9, Severity.Warn)]
    public void A_line_that_ends_beside_the_seam_keeps_a_millimeter(int aside, Severity? expected) =>
        OnSeam(Stems with { Middle = new(35 + aside, 0) }).Level(Rule).ShouldBe(expected);

    [Fact]
    public void On_a_fill_small_letters_do_not_sink_into_the_seam() =>
        (Lettered.On(draft => draft.Sew(Fill.Of(new Box(-300, -40, 300, 100))), Stems) with { Job = OnOrigin }).Level(Rule).ShouldBeNull();

    [Fact]
    public void A_front_of_one_piece_has_no_seam() =>
        (OnSeam(Stems) with { Job = OnOrigin.On("five-panel-structured-mid") }).Level(Rule).ShouldBeNull();

    [Fact]
    public void On_one_side_of_the_cap_there_is_no_seam() =>
        (OnSeam(Stems) with { Job = OnOrigin with { Ticket = OnOrigin.Ticket with { Location = CapLocation.Left } } })
            .Level(Rule).ShouldBeNull();

    [Fact]
    public void A_hyphen_on_the_seam_is_no_letter() => (OnSeam(Stems) with
    {
        Known = line => line with { Glyphs = [.. line.Glyphs.Select(glyph => glyph.Index == 1 ? glyph with { HeightMm = 3 } : glyph)] },
    }).Level(Rule).ShouldBeNull();

    private static Lettered OnSeam(TextToSew line) => Lettered.Of(line) with { Job = OnOrigin };
}
