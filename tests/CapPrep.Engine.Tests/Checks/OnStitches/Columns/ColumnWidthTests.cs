using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Columns;

/// <summary>Tape units are 0.1 mm; a row of a column 1.0 mm wide is 1.02 mm long, since it slants.</summary>
public sealed class ColumnWidthTests
{
    private const string Narrow = "stitch.column-narrow";
    private const string Wide = "stitch.column-wide";

    /// <summary>
    /// Row L12: 1.0 mm is the safe width of a satin column (Stitching guidelines for digitizing, Graphics Pro,
    /// https://graphics-pro.com/feature/stitching-guidelines-for-digitizing/).
    /// </summary>
    [Theory]
    [InlineData(10, null)]
    [InlineData(9, Severity.Warn)]
    public void A_column_under_one_millimeter_is_a_warn(int width, Severity? expected) =>
        Level(Narrow, draft => draft.Sew(Column.Upright(new(0, 0), width, 100))).ShouldBe(expected);

    /// <summary>House: three quarters of the width for thread of 60 wt and finer.</summary>
    [Theory]
    [InlineData(8, 60, null)]
    [InlineData(6, 60, Severity.Warn)]
    [InlineData(8, 50, Severity.Warn)]
    public void Finer_thread_may_be_sewn_narrower(int width, int weight, Severity? expected) =>
        Level(Narrow, draft => draft.Sew(Column.Upright(new(0, 0), width, 100)), new TicketThread { Block = 1, WeightWt = weight }).ShouldBe(expected);

    /// <summary>House: four fifths of the width on a fill.</summary>
    [Theory]
    [InlineData(8, null)]
    [InlineData(6, Severity.Warn)]
    public void On_a_fill_a_column_may_be_narrower(int width, Severity? expected) => Level(Narrow, draft => draft
        .Sew(Fill.Of(new(-50, -50, 100, 150))).ColorStop().Move(new(0, 0)).Sew(Column.Upright(new(0, 0), width, 100))).ShouldBe(expected);

    [Theory]
    [InlineData(7, "1 column is too narrow for satin. The narrowest is 0.73 mm wide; at least 1 mm is wanted there.")]
    [InlineData(6, "1 column is too narrow for satin. The narrowest is 0.63 mm wide; at least 1 mm is wanted there. It will not read.")]
    public void Under_seven_tenths_it_will_not_read(int width, string message) =>
        RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), width, 100))).Finding(Narrow).ShouldNotBeNull().Message.ShouldBe(message);

    [Fact]
    public void Tips_and_tapers_do_not_count() => Level(Narrow, draft => draft.Sew(new Column(
        new([new(0, 0), new(0, 30), new(0, 120), new(0, 150)]), new([new(2, 0), new(14, 30), new(14, 120), new(2, 150)])))).ShouldBeNull();

    [Fact]
    public void A_serif_is_no_column() => Level(Narrow, draft => draft.Sew(Column.Upright(new(0, 0), 8, 24))).ShouldBeNull();

    [Fact]
    public void What_is_covered_later_may_be_narrow() => Level(Narrow, draft => draft
        .Sew(Column.Upright(new(0, 0), 8, 100)).ColorStop().Move(new(-50, -50)).Sew(Fill.Of(new(-50, -50, 100, 150)))).ShouldBeNull();

    [Theory]
    [InlineData(Narrow, 8)]
    [InlineData(Wide, 100)]
    public void Foam_has_rules_of_its_own(string rule, int width) => (RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), width, 300))) with
    {
        Ticket = Job.Clean.Ticket with { Technique = Technique.Foam },
    }).Finding(rule).ShouldBeNull();

    /// <summary>
    /// Row L21: satin stitches over 9 mm wear and snag (Stitch types, Printwear, February 2016,
    /// http://read.uberflip.com/i/631221-february-16/65). Row L23: 7 mm is called the standard from which to jump (Stitch
    /// length, compiled embroidery skill articles, 2016, https://www.yumpu.com/en/document/view/56185124/compiled-embroidery-skill-articles/52).
    /// </summary>
    [Theory]
    [InlineData(69, null)]
    [InlineData(71, Severity.Note)]
    [InlineData(89, Severity.Note)]
    [InlineData(91, Severity.Warn)]
    public void Wide_columns_pass_one_limit_after_the_other(int width, Severity? expected) =>
        Level(Wide, draft => draft.Sew(Column.Upright(new(0, 0), width, 200))).ShouldBe(expected);

    [Fact]
    public void A_wide_middle_of_less_than_a_quarter_of_the_rows_is_passed_over() => Level(Wide, draft => draft.Sew(new Column(
        new([new(0, 0), new(0, 100), new(-30, 110), new(0, 120), new(0, 300)]),
        new([new(60, 0), new(60, 100), new(90, 110), new(60, 120), new(60, 300)])))).ShouldBeNull();

    [Fact]
    public void Split_rows_do_not_snag() => Level(Wide, draft => draft.Stitches(Enumerable.Range(0, 100).SelectMany(row => new TapePoint[]
    {
        new(row % 2 * 80, row * 2), new(30 + (row % 4 * 7), (row * 2) + 1),
    }))).ShouldBeNull();

    [Fact]
    public void The_remedy_names_what_will_not_come_back()
    {
        var finding = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 8, 100))).Finding(Narrow).ShouldNotBeNull();

        finding.Limit.Source!.Row.ShouldBe("L12");
        finding.Remedy!.Message.ShouldBe("Widen the column to 1 mm, or sew it as a running line.");
        finding.Places.ShouldHaveSingleItem().Elements.ShouldBe([1]);
    }

    private static Severity? Level(string rule, Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) =>
        (RuleCases.Drafted(sew) with { Ticket = Job.Clean.Ticket with { Threads = threads.Count == 0 ? null : threads } }).Finding(rule)?.Severity;
}
