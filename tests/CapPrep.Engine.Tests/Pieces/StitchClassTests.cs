using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class StitchClassTests
{
    [Fact]
    public void A_column_is_satin_with_its_width_pitch_and_thread_per_area()
    {
        var piece = Only(Read.Of(new Draft().Sew(Read.Column(0, 0) with { UnderlayStitch = 0 })));

        piece.Class.ShouldBe(StitchClass.Satin);
        piece.WidthMm.ShouldBe(3.0, 0.05);
        piece.PitchMm.ShouldBe(0.40, 0.01);
        piece.Rows.ShouldBe(75);
        piece.Axis.Degrees.ShouldBe(0, 1);
        piece.Sure.ShouldBeTrue();
        // Two rows of 3.0 mm on 3.0 by 0.40 mm: 5.0 mm per mm2, less what the outermost half cells add to the area.
        piece.ThreadPerAreaMm.ShouldBe(5.0, 0.5);
    }

    [Fact]
    public void A_column_that_turns_half_a_circle_is_one_satin_piece_without_a_direction()
    {
        var piece = Only(Read.Of(new Draft().Sew(Arc(inner: 100, outer: 130) with { UnderlayStitch = 0 })));

        piece.Class.ShouldBe(StitchClass.Satin);
        piece.WidthMm.ShouldBe(3.0, 0.1);
        piece.Axis.IsDirected.ShouldBeFalse();
    }

    [Fact]
    public void Rows_of_several_stitches_are_a_fill()
    {
        var piece = Only(Read.Of(new Draft().Sew(Read.Fill(0, 0, 200, 120) with { UnderlayPitch = 0 })));

        piece.Class.ShouldBe(StitchClass.Fill);
        piece.WidthMm.ShouldBe(20.0, 0.05);
        piece.PitchMm.ShouldBe(0.80, 0.01);
        piece.Rows.ShouldBe(31);
        piece.Box.ShouldBe(new Box(0, 0, 200, 120));
    }

    [Fact]
    public void A_line_around_a_box_is_running()
    {
        var piece = Only(Read.Of(new Draft().Run(25, Read.At(0, 0), Read.At(300, 0), Read.At(300, 200), Read.At(0, 200), Read.At(0, 0))));

        piece.Class.ShouldBe(StitchClass.Running);
        (piece.Rows, piece.WidthMm, piece.PitchMm).ShouldBe((0, 0, 0));
        piece.Axis.ShouldBe(Axis.None);
        piece.Sure.ShouldBeTrue();
    }

    [Fact]
    public void A_wide_zigzag_is_open()
    {
        var piece = Only(Read.Of(new Draft().Sew(Read.Column(0, 0) with { UnderlayStitch = 0, Pitch = 25 })));

        piece.Class.ShouldBe(StitchClass.OpenZigzag);
        piece.PitchMm.ShouldBe(2.5, 0.05);
    }

    [Fact]
    public void A_line_sewn_three_times_stitch_by_stitch_is_retraced()
    {
        var draft = new Draft().Stitch(Read.At(0, 0));
        for (var x = 0; x < 300; x += 25)
            draft.Stitches([Read.At(x + 25, 0), Read.At(x, 0), Read.At(x + 25, 0)]);

        Only(Read.Of(draft)).Class.ShouldBe(StitchClass.Retraced);
    }

    [Fact]
    public void Rows_1_15_mm_apart_with_steps_between_them_are_still_one_fill()
    {
        var rows = Enumerable.Range(0, 12).SelectMany(row => row % 2 == 0
            ? new Way([Read.At(0, row * 12), Read.At(400, row * 12)]).InStitches(40)
            : new Way([Read.At(400, row * 12), Read.At(0, row * 12)]).InStitches(40));

        Only(Read.Of(new Draft().Stitches(rows))).Class.ShouldBe(StitchClass.OpenFill);
    }

    [Fact]
    public void Underlay_out_and_cover_back_are_parted_where_the_rows_fold()
    {
        var reading = Read.Of(new Draft().Sew(Read.Column(0, 0, height: 240) with { UnderlayStitch = 0, Pitch = 14 })
            .Stitches(new Way([Read.At(15, 240), Read.At(15, 240)]).InStitches(10))
            .Sew(Turned(Read.Column(0, 0, height: 240) with { UnderlayStitch = 0 })));

        reading.Elements.Count.ShouldBe(1);
        reading.Spans.Count(span => span.Class == StitchClass.Satin).ShouldBeGreaterThanOrEqualTo(2);
        reading.Spans[0].Last.ShouldBeInRange(32, 38);
    }

    [Fact]
    public void A_scribble_is_not_sure()
    {
        var points = Enumerable.Range(0, 60).Select(k => Read.At((k * 37 % 60) + (k % 3 * 40), (k * 53 % 70) + (k % 5 * 20)));

        var reading = Read.Of(new Draft().Stitches(points));

        reading.Pieces.ShouldContain(piece => !piece.Sure);
        reading.AssignedShare.ShouldBeLessThan(1);
    }

    private static Piece Only(DesignReading reading) => reading.Pieces.ShouldHaveSingleItem();

    private static Column Turned(Column column) => column with { Left = column.Left.Backward(), Right = column.Right.Backward() };

    private static Column Arc(int inner, int outer)
    {
        return new(Rail(inner), Rail(outer));

        static Way Rail(int radius) => new([.. Enumerable.Range(0, 37).Select(k => new TapePoint(
            (int)Math.Round(radius * Math.Cos(Math.PI * k / 36)), (int)Math.Round(radius * Math.Sin(Math.PI * k / 36))))]);
    }
}
