using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class PatternTests
{
    private static readonly TapePoint[] Diamond =
        [new(20, 15), new(20, -15), new(-20, -15), new(-20, 15), new(20, 15), new(25, 0)];

    private static readonly TapePoint[] Blanket = [new(25, 0), new(0, 40), new(0, -40)];

    private static readonly TapePoint[] Triangles = [new(24, 0), new(-12, 21), new(-12, -21), new(6, 0)];

    [Fact]
    public void A_row_of_diamonds_is_a_pattern()
    {
        var piece = Read.Of(Repeated(Diamond, 12)).Pieces.ShouldHaveSingleItem();

        (piece.Class, piece.Sure, piece.Rows).ShouldBe((StitchClass.Pattern, true, 0));
    }

    [Fact]
    public void A_pattern_around_a_circle_is_one_piece()
    {
        var reading = Read.Of(Around(Diamond, 60));

        reading.Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Pattern);
        reading.Elements.ShouldHaveSingleItem().Kind.ShouldBe(ElementKind.Pattern);
    }

    [Fact]
    public void Three_stitches_forward_out_and_back_are_a_pattern() =>
        Read.Of(Repeated(Blanket, 14)).Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Pattern);

    [Fact]
    public void A_pattern_between_two_lines_is_cut_out_of_them()
    {
        var draft = Repeated(Diamond, 12, new Draft().Run(25, Read.At(-400, 0), Read.At(0, 0)));

        Read.Of(draft.Run(25, draft.At, draft.At + new TapePoint(0, 400))).Pieces.Select(piece => piece.Class)
            .ShouldBe([StitchClass.Running, StitchClass.Pattern, StitchClass.Running]);
    }

    [Fact]
    public void Two_repeats_are_no_pattern() =>
        Read.Of(Repeated(Diamond, 2)).Pieces.ShouldAllBe(piece => piece.Class != StitchClass.Pattern);

    [Fact]
    public void Lines_zigzags_satin_and_fills_are_no_patterns()
    {
        Draft[] designs =
        [
            new Draft().Run(25, Read.At(0, 0), Read.At(600, 200)),
            Around([new(25, 0)], 90),
            Repeated([new(10, 30), new(10, -30)], 40),
            new Draft().Sew(Read.Column(0, 0)),
            new Draft().Sew(Read.Fill(0, 0, 200, 120)),
            Around([new(25, 0), new(-25, 0), new(25, 0)], 50),
            Repeated([new(30, 0), new(30, 0), new(0, 4), new(-30, 0), new(-30, 0), new(0, 4)], 20),
        ];

        foreach (var design in designs)
            Read.Of(design).Pieces.ShouldAllBe(piece => piece.Class != StitchClass.Pattern);
    }

    [Fact]
    public void A_line_that_goes_round_in_place_is_no_pattern()
    {
        var draft = new Draft();
        for (var k = 0; k < 6; k++)
            draft.Stitches([Read.At(0, 0), Read.At(30, 0), Read.At(45, 25), Read.At(20, 45), Read.At(-10, 25)]);

        Read.Of(draft).Pieces.ShouldAllBe(piece => piece.Class != StitchClass.Pattern);
    }

    [Fact]
    public void A_closed_edge_hides_what_is_sewn_under_it_and_an_open_one_does_not()
    {
        Hides(Triangles).ShouldBeTrue();
        Hides(Diamond).ShouldBeFalse();
    }

    private static bool Hides(TapePoint[] repeat)
    {
        var pattern = Repeated(repeat, 40);
        var middle = Read.Stitches(pattern).Extents().Center.Y;
        var draft = new Draft().Run(25, Read.At(60, middle), Read.At(240, middle)).Trim(TapePoint.Origin);
        return Read.Of(Repeated(repeat, 40, draft)).Spans[0].Role is SpanRole.HiddenTravel or SpanRole.Underlay;
    }

    private static Draft Repeated(TapePoint[] repeat, int times, Draft? behind = null)
    {
        var draft = (behind ?? new Draft()).Stitch(behind is null ? TapePoint.Origin : behind.At);
        for (var k = 0; k < times * repeat.Length; k++)
            draft.Stitch(draft.At + repeat[k % repeat.Length]);
        return draft;
    }

    /// <summary>Every repeat turned a little further, so that the last one meets the first.</summary>
    private static Draft Around(TapePoint[] repeat, int times)
    {
        var draft = new Draft().Stitch(TapePoint.Origin);
        for (var k = 0; k < times; k++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * k / times);
            foreach (var way in repeat)
                draft.Stitch(draft.At + new TapePoint((int)Math.Round((way.X * cosine) - (way.Y * sine)), (int)Math.Round((way.X * sine) + (way.Y * cosine))));
        }

        return draft;
    }
}
