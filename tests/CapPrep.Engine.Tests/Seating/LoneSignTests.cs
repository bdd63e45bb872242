using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tickets;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Seating;

public sealed class LoneSignTests
{
    private static readonly TapePoint AtTheRight = new(340, 80);
    private static readonly TapePoint AtTheLeft = new(-60, 80);

    [Fact]
    public void A_sign_behind_a_word_is_not_centered_with_it()
    {
        var seated = Seated(Word(AtTheRight));

        ShouldBeCentered(seated.CenteredBox);
        seated.Box.Right.ShouldBeGreaterThan(-seated.Box.Left + 40);
    }

    [Fact]
    public void A_sign_before_a_word_is_not_either()
    {
        var seated = Seated(Word(AtTheLeft));

        ShouldBeCentered(seated.CenteredBox);
        seated.Box.Left.ShouldBeLessThan(-seated.Box.Right - 40);
    }

    [Fact]
    public void Turned_with_the_tape_it_is_the_same()
    {
        var job = Job.Clean with { Tape = Word(AtTheRight).ToTape("TEST") };
        var upright = Seated(Word(AtTheRight));
        var turned = (job with { Tape = Stitched.Of(Word(AtTheRight).Moves.Select(move => move with { To = move.To.Turned() })), Ticket = job.Ticket with { TapeIs = TapeOrientation.Turned } }).Prepare().Seating!;

        turned.CenteredBox.Width.ShouldBe(upright.CenteredBox.Width);
        turned.Box.Right.ShouldBe(upright.Box.Right);
    }

    [Fact]
    public void With_a_sign_at_both_ends_all_is_centered() => ShouldBeWhole(Word(AtTheLeft, AtTheRight));

    [Fact]
    public void What_stands_close_is_no_lone_sign() => ShouldBeWhole(Word(new TapePoint(285, 80)));

    [Fact]
    public void What_is_large_is_no_sign() => ShouldBeWhole(Word().Trim(new(340, 0)).Sew(Column.Upright(new(340, 0), 20, 60)));

    [Fact]
    public void A_letter_of_a_line_of_small_letters_is_no_sign() => ShouldBeWhole(Word(new TapePoint(300, 80), new TapePoint(325, 80), new TapePoint(350, 80)));

    private static void ShouldBeWhole(Draft draft)
    {
        var seated = Seated(draft);
        seated.CenteredBox.ShouldBe(seated.Box);
        ShouldBeCentered(seated.Box);
    }

    private static void ShouldBeCentered(Box box) => (box.Left + box.Right).ShouldBeInRange(-1, 1);

    private static SeatedDesign Seated(Draft draft) => (Job.Clean with { Tape = draft.ToTape("TEST") }).Prepare().Seating.ShouldNotBeNull();

    /// <summary>Six columns of 10 mm, and signs of 2 by 2 mm.</summary>
    private static Draft Word(params TapePoint[] signs)
    {
        var draft = new Draft().Move(new(0, 0));
        for (var letter = 0; letter < 6; letter++)
            draft = (letter == 0 ? draft : draft.Trim(new(letter * 50, 0))).Sew(Column.Upright(new(letter * 50, 0), 30, 100));
        return signs.Aggregate(draft, (sewn, sign) => sewn.Trim(sign).Sew(Column.Upright(sign, 20, 20)));
    }
}
