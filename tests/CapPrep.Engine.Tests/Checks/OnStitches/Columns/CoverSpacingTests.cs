using CapPrep.Engine.Checks.OnStitches.Columns;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Columns;

/// <summary>Limits are house; tape units are 0.1 mm.</summary>
public sealed class CoverSpacingTests
{
    private static readonly Box Area = new(0, 0, 200, 150);

    [Theory]
    [InlineData(3, Severity.Warn)]
    [InlineData(4, null)]
    [InlineData(5, null)]
    [InlineData(6, Severity.Warn)]
    [InlineData(8, Severity.Warn)]
    public void Satin_may_be_neither_dense_nor_open(int pitch, Severity? expected) =>
        Level(Satin(pitch)).ShouldBe(expected);

    [Theory]
    [InlineData(4, null)]
    [InlineData(5, null)]
    [InlineData(6, Severity.Warn)]
    [InlineData(8, Severity.Warn)]
    public void Parallel_rows_are_judged_by_their_distance(int rowPitch, Severity? expected) =>
        Level(draft => draft.Sew(Fill.Of(Area) with { RowPitch = rowPitch })).ShouldBe(expected);

    /// <summary>A turn of 45 degrees: the steps from row to row lie in the direction of the rows.</summary>
    [Fact]
    public void A_slanted_edge_does_not_open_a_fill() => Level(draft => draft.Sew(new Fill([new(0, 0), new(200, 0), new(350, 150), new(150, 150)]))).ShouldBeNull();

    /// <summary>
    /// Rows L35 to L38: 0.40 mm is the standard (Thread-break column, Printwear, December 2016,
    /// http://read.uberflip.com/i/753675-december-16/35), 0.42 the densest advised fill and 0.47 a satin border (Pull and
    /// density advice, Images magazine, February 2022, http://images-digital.com/DE/ImagesMagUK_February_2022/69), 0.35 to
    /// 0.45 usual for logos (grade D). Row W24: 63.5 lines in an inch are 0.400 mm.
    /// </summary>
    [Theory]
    [InlineData(25.4 / 63.5)]
    [InlineData(0.42)]
    [InlineData(0.47)]
    [InlineData(0.35)]
    [InlineData(0.45)]
    public void Published_spacings_are_read_as_they_are_and_pass(double spacingMm)
    {
        var job = RuleCases.Drafted(draft => draft.Stitches(Rows(spacingMm, 200)));
        var stitches = StitchSequence.Of(job.Tape, 3);
        var piece = DesignReader.Read(stitches).Pieces.ShouldHaveSingleItem();

        RowOpenings.OfMm(piece, stitches).ShouldNotBeNull().ShouldBe(spacingMm, 0.03);
        job.Finding("stitch.cover").ShouldBeNull();
        job.Finding("stitch.crowded").ShouldBeNull();
    }

    [Fact]
    public void What_others_cover_may_be_open() => Level(draft => draft
        .Sew(Fill.Of(Area) with { RowPitch = 8 }).ColorStop().Move(new(0, 0)).Sew(Fill.Of(Area))).ShouldBeNull();

    [Fact]
    public void Foam_is_sewn_dense_on_purpose() => (RuleCases.Drafted(Satin(3)) with
    {
        Ticket = Job.Clean.Ticket with { Technique = Technique.Foam },
    }).Finding("stitch.crowded").ShouldBeNull();

    [Fact]
    public void Metallic_thread_has_rules_of_its_own() => (RuleCases.Drafted(Satin(6)) with
    {
        Ticket = Job.Clean.Ticket with { Threads = [new TicketThread { Block = 1, Kind = ThreadKind.Metallic }] },
    }).Finding("stitch.cover").ShouldBeNull();

    [Theory]
    [InlineData(0)]
    [InlineData(110)]
    public void A_blend_of_two_open_fills_with_a_highlight_is_meant_so(int shift) => Level(draft => Blend(draft, shift)
        .ColorStop().Move(new(60, 50)).Sew(Column.Upright(new(60, 50), 30, 60))).ShouldBeNull();

    [Fact]
    public void One_open_fill_beside_a_closed_one_of_another_color_is_no_blend() => Level(draft => draft
        .Sew(Fill.Of(Area) with { RowPitch = 8 }).ColorStop().Move(new(220, 0)).Sew(Fill.Of(Area.Shift(220, 0)))).ShouldBe(Severity.Warn);

    [Fact]
    public void Two_open_fills_of_one_thread_are_no_blend() => (RuleCases.Drafted(draft => Blend(draft, shift: 110)) with
    {
        Ticket = Job.Clean.Ticket with { Threads = [new TicketThread { Block = 1, Code = "1147" }, new TicketThread { Block = 2, Code = "1147" }] },
    }).Finding("stitch.cover").ShouldNotBeNull().Severity.ShouldBe(Severity.Warn);

    [Fact]
    public void An_open_fill_shades_the_closed_one_under_it() => Level(draft => draft
        .Sew(Fill.Of(Area)).ColorStop().Move(new(20, 20)).Sew(Fill.Of(new(20, 20, 180, 130)) with { RowPitch = 8, UnderlayPitch = 0 })).ShouldBeNull();

    /// <summary>House: up to 0.7 mm.</summary>
    [Theory]
    [InlineData(7, null)]
    [InlineData(8, Severity.Warn)]
    public void Satin_on_a_fill_may_be_lighter(int pitch, Severity? expected) => Level(draft => draft
        .Sew(Fill.Of(Area)).ColorStop().Move(new(80, 20)).Sew(Column.Upright(new(80, 20), 40, 110) with { Pitch = pitch })).ShouldBe(expected);

    [Fact]
    public void Rows_very_far_apart_are_drawn_so() => Level(Satin(12)).ShouldBeNull();

    [Fact]
    public void A_small_area_is_passed_over() => Level(draft => draft.Sew(Column.Upright(new(0, 0), 30, 50) with { Pitch = 8 })).ShouldBeNull();

    [Fact]
    public void Open_and_dense_rows_are_told_apart()
    {
        var job = RuleCases.Drafted(draft => Satin(3)(draft)
            .Trim(new(100, 0)).Sew(Column.Upright(new(100, 0), 40, 200) with { Pitch = 8 })
            .Trim(new(200, 0)).Sew(Column.Upright(new(200, 0), 40, 200) with { Pitch = 7 }));

        job.Finding("stitch.cover").ShouldNotBeNull().Message.ShouldBe("2 areas have rows too far apart: spacing 0.7 to 0.8 mm.");
        job.Finding("stitch.crowded").ShouldNotBeNull().Message.ShouldBe("1 area has rows too dense: spacing 0.3 mm.");
    }

    [Theory]
    [InlineData("stitch.cover", 6, 0.65, null)]
    [InlineData("stitch.cover", 5, 0.45, Severity.Warn)]
    [InlineData("stitch.crowded", 3, 0.25, null)]
    [InlineData("stitch.crowded", 4, 0.45, Severity.Warn)]
    public void A_shop_may_set_either_spacing_for_a_customer_a_style_or_a_location(string rule, int pitch, double value, Severity? expected)
    {
        var job = RuleCases.Drafted(Satin(pitch));
        RuleChange[] changes = [new(rule) { Limits = [new(Severity.Warn, value, Off: false)] }];

        Found(new() { Rules = changes, Customer = "northside" }).ShouldBe(expected);
        Found(new() { Rules = changes, CapStyle = job.Ticket.CapStyle }).ShouldBe(expected);
        Found(new() { Rules = changes, Location = CapLocation.Front }).ShouldBe(expected);
        Found(new() { Rules = changes, Customer = "southside" }).ShouldBe(job.Finding(rule)?.Severity);

        Severity? Found(RuleOverride over) => (job with
        {
            Ticket = job.Ticket with { Customer = "northside" },
            Book = new() { Id = "shop", Name = "Shop", Overrides = [over] },
        }).Finding(rule)?.Severity;
    }

    /// <summary>Two open fills of 20 x 15 mm, the second one moved to the right.</summary>
    private static Draft Blend(Draft draft, int shift) => draft
        .Sew(Fill.Of(Area) with { RowPitch = 8 }).ColorStop().Move(new(shift, 2)).Sew(Fill.Of(Area.Shift(shift, 2)) with { RowPitch = 8 });

    private static Func<Draft, Draft> Satin(int pitch) => draft => draft.Sew(Column.Upright(new(0, 0), 40, 200) with { Pitch = pitch });

    private static IEnumerable<TapePoint> Rows(double spacingMm, int rows) =>
        Enumerable.Range(0, rows).Select(row => new TapePoint(row % 2 * 40, (int)Math.Round(5 * row * spacingMm)));

    private static Severity? Level(Func<Draft, Draft> sew)
    {
        var job = RuleCases.Drafted(sew) with { Ticket = Job.Clean.Ticket with { Threads = null } };
        return job.Finding("stitch.cover")?.Severity ?? job.Finding("stitch.crowded")?.Severity;
    }
}
