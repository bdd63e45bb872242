using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Tapes;

public sealed class DraftTests
{
    [Fact]
    public void A_run_has_equal_stitches_not_longer_than_given()
    {
        var draft = new Draft().Run(25, new(0, 0), new(100, 0), new(100, 30));

        Needle(draft).ShouldBe([new(0, 0), new(25, 0), new(50, 0), new(75, 0), new(100, 0), new(100, 15), new(100, 30)]);
    }

    [Fact]
    public void A_column_alternates_between_its_rails_and_advances_by_its_pitch()
    {
        var column = Column.Upright(new(10, 0), width: 40, height: 40) with { UnderlayStitch = 0 };

        var needle = Needle(new Draft().Sew(column));

        needle.Count.ShouldBe(21);
        needle.Where((_, index) => index % 2 == 0).ShouldAllBe(point => point.X == 10);
        needle.Where((_, index) => index % 2 == 1).ShouldAllBe(point => point.X == 50);
        (needle[2].Y - needle[0].Y).ShouldBe(4);
    }

    [Fact]
    public void Underlay_of_a_column_comes_first_and_stays_inside()
    {
        var column = Column.Upright(new(0, 0), width: 40, height: 100);

        var needle = Needle(new Draft().Sew(column));
        var bare = Needle(new Draft().Sew(column with { UnderlayStitch = 0 }));

        needle.TakeLast(bare.Count).ShouldBe(bare);
        needle.SkipLast(bare.Count).ShouldAllBe(point => point.X == 20 && point.Y >= 10 && point.Y <= 90);
        needle.Count.ShouldBeGreaterThan(bare.Count);
    }

    [Fact]
    public void A_curved_column_follows_its_rails()
    {
        var column = new Column(new([new(0, 0), new(0, 50), new(50, 100)]), new([new(40, 0), new(40, 40), new(90, 90)]));

        var needle = Needle(new Draft().Sew(column with { UnderlayStitch = 0 }));

        needle[0].ShouldBe(new TapePoint(0, 0));
        new TapePoint[] { new(50, 100), new(90, 90) }.ShouldContain(needle[^1]);
    }

    [Fact]
    public void A_fill_covers_its_box_from_the_bottom_up_with_offset_needle_points()
    {
        var needle = Needle(new Draft().Sew(Fill.Of(new(0, 0, 200, 40)) with { UnderlayPitch = 0 }));

        var rows = needle.GroupBy(point => point.Y).ToList();
        rows.Select(row => row.Key).ShouldBe(Enumerable.Range(0, 11).Select(row => row * 4));
        rows.ShouldAllBe(row => row.Min(point => point.X) == 0 && row.Max(point => point.X) == 200);
        rows.Zip(rows.Skip(1)).ShouldAllBe(pair =>
            !Inner(pair.First).Intersect(Inner(pair.Second)).Any());
        Steps(needle).ShouldAllBe(step => step.Reach >= 4 && step.Reach <= 48);
    }

    [Fact]
    public void A_fill_keeps_to_its_outline()
    {
        var needle = Needle(new Draft().Sew(new Fill([new(0, 0), new(100, 100), new(-100, 100)])));

        needle.ShouldAllBe(point => Math.Abs(point.X) <= point.Y && point.Y <= 100);
    }

    [Fact]
    public void A_tie_is_short_and_ends_where_it_began()
    {
        var needle = Needle(new Draft().Stitch(new(10, 10)).Tie(new(10, 60)));

        needle.ShouldBe([new(10, 10), new(10, 17), new(10, 10), new(10, 17), new(10, 10)]);
    }

    [Fact]
    public void A_trim_reads_as_a_cut_and_a_color_stop_as_a_stop()
    {
        var draft = new Draft().Stitch(new(5, 5)).Trim(new(60, 5)).ColorStop().Stitch(new(60, 5));

        var tape = draft.ToTape("DRAFT");

        StitchSequence.Of(tape, 3).Relations.ToArray().ShouldBe([Relation.First, Relation.Cut, Relation.Stop]);
    }

    [Fact]
    public void A_figure_that_begins_where_the_needle_is_does_not_pierce_twice()
    {
        var draft = new Draft().Run(20, new(0, 0), new(40, 0)).Run(20, new(40, 0), new(40, 40));

        draft.ToTape("DRAFT").Quirks.ShouldBeEmpty();
    }

    [Fact]
    public void Boxes_have_the_size_place_and_blocks_that_were_asked_for()
    {
        var tape = TapeBuilder.Box(601, 250, new(-300, 130), blocks: 3).ToTape("BOX");

        var facts = TapeCounts.Of(tape, 3);
        facts.Extents.ShouldBe(new Box(-300, 130, 301, 380));
        facts.Blocks.ShouldBe(3);
        facts.ColorStops.ShouldBe(2);
    }

    [Fact]
    public void The_crest_has_three_colors_and_is_sewn_from_the_bottom_up()
    {
        var facts = TapeCounts.Of(TapeBuilder.Crest().ToTape("CREST"), 3);

        (facts.Blocks, facts.Trims, facts.Extents).ShouldBe((3, 2, new Box(-300, 0, 300, 450)));
    }

    private static IEnumerable<int> Inner(IEnumerable<TapePoint> row) =>
        row.Select(point => point.X).Where(x => x is not (0 or 200));

    private static List<TapePoint> Needle(Draft draft) =>
        [.. draft.Moves.Where(move => move.Kind == RecordKind.Stitch).Select(move => move.To)];

    private static IEnumerable<TapePoint> Steps(List<TapePoint> needle) =>
        needle.Zip(needle.Skip(1), (from, to) => to - from);
}
