using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters.OnLines;

public sealed class EyeCenterTests
{
    private const string Rule = "place.eye-center";

    private static readonly TextToSew Word = new("HARBOR") { XHeight = 80, StrokeWidth = 20 };

    [Theory]
    [InlineData(30, false)]
    [InlineData(31, true)]
    public void A_small_thing_at_one_end_moves_the_word_off_the_middle(int beyond, bool noted) =>
        (Beside(beyond).Finding(Rule) is not null).ShouldBe(noted);

    [Fact]
    public void The_note_says_how_far_to_move_the_word()
    {
        var lettered = Beside(40);

        var finding = lettered.Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Note);
        finding.Message.ShouldBe(
            "The word's middle lies 2 mm to the viewer's left of the design's middle. Moved so far to the viewer's right it would lie on the seam.");
        finding.Places.ShouldHaveSingleItem().BoxMm.ShouldBe(lettered.Subject().TextLines[0].Box.ToMillimeters());
    }

    [Fact]
    public void A_front_of_one_piece_has_a_center_and_no_seam() =>
        (Beside(40) with { Job = Job.Clean.On("five-panel-structured-mid") }).Finding(Rule)!.Message.ShouldEndWith("would lie on the center.");

    [Fact]
    public void An_emblem_beside_the_word_belongs_to_it() =>
        Lettered.On(draft => draft.Sew(Fill.Of(new Box(450, 0, 650, 112))), Word).Finding(Rule).ShouldBeNull();

    [Fact]
    public void A_word_that_the_ticket_moves_is_where_it_was_wanted() =>
        (Beside(40) with { Job = Job.Clean.Seating(new TicketSeating { OffsetRightMm = 2 }) }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void A_design_centered_by_weight_is_not_centered_by_its_box() =>
        (Beside(40) with { Job = Job.Clean.Seating(new TicketSeating { CenterBy = SeatingCenter.Weight }) }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void Half_a_front_has_no_center() =>
        (Beside(40) with { Job = Job.Clean with { Ticket = Job.Clean.Ticket with { Location = CapLocation.FrontLeft } } }).Finding(Rule).ShouldBeNull();

    [Fact]
    public void Without_letters_the_part_that_carries_the_design_counts() =>
        RuleCases.Drafted(draft => draft.Sew(Fill.Of(new Box(0, 0, 400, 200))).Trim(new(440, 0)).Run(20, new TapePoint(440, 0), new TapePoint(440, 30)))
            .Finding(Rule)!.Message.ShouldStartWith("The main part's middle lies 2 mm to the viewer's left");

    /// <summary>A word with a short line at so many tape units beyond its right end.</summary>
    private static Lettered Beside(int beyond)
    {
        var right = Lettered.Of(Word).Lines[0].Letters.Max(letter => letter.Box.Right);
        return Lettered.On(draft => draft.Run(20, new TapePoint(right + beyond, 0), new TapePoint(right + beyond, 30)), Word);
    }
}
