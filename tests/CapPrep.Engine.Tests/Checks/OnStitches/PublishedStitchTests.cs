using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>Published stitch lengths and hole sizes against what the checks say. Tape units are 0.1 mm.</summary>
public sealed class PublishedStitchTests
{
    /// <summary>
    /// Row L28: running stitches of 1 mm at the least, 1.5 to 2 mm at best, 5 mm at most (Stitch types, Printwear, February
    /// 2016, http://read.uberflip.com/i/631221-february-16/65).
    /// </summary>
    [Theory]
    [InlineData(10)]
    [InlineData(15)]
    [InlineData(20)]
    [InlineData(50)]
    public void Usual_running_stitches_pass(int stitch) =>
        Found(draft => draft.Run(stitch, new TapePoint(0, 0), new TapePoint(300, 0), new TapePoint(300, 200))).ShouldBeEmpty();

    /// <summary>
    /// Rows L29, L30: fill stitches of 3 to 6 mm, 4 mm usual (Stitch length, compiled embroidery skill articles, 2016,
    /// https://www.yumpu.com/en/document/view/56185124/compiled-embroidery-skill-articles/52).
    /// </summary>
    [Theory]
    [InlineData(30)]
    [InlineData(40)]
    [InlineData(60)]
    public void Usual_fill_stitches_pass(int stitch) =>
        Found(draft => draft.Sew(Fill.Of(new(0, 0, 300, 200)) with { StitchLength = stitch })).ShouldBeEmpty();

    /// <summary>
    /// Row W23: a 75/11 needle makes holes of 0.75 mm, so that stitches of 1.0 mm leave 0.25 mm of cloth between them
    /// (row L41, Stitch types, Printwear, February 2016, http://read.uberflip.com/i/631221-february-16/65). Where that is so
    /// nothing is short; where holes meet, at 0.4 mm, it is.
    /// </summary>
    [Theory]
    [InlineData(10, 0.25, false)]
    [InlineData(4, -0.35, true)]
    public void Stitches_are_short_where_needle_holes_meet(int stitch, double clothMm, bool isShort)
    {
        var draft = new Draft().Run(25, new TapePoint(-200, 0), new TapePoint(0, 0)).Grid(stitch, stitch, 8 * stitch, 8 * stitch);
        var way = draft.Moves[^1].To - draft.Moves[^2].To;

        ((Math.Abs(way.X) / 10.0) - 0.75).ShouldBe(clothMm, 1e-9);
        (RuleCases.Drafted(_ => draft).Finding("stitch.short") is not null).ShouldBe(isShort);
    }

    /// <summary>Row L45: moves over 5 to 8 mm are usually trimmed (a shop's page, grade D).</summary>
    [Fact]
    public void A_move_that_is_usually_trimmed_is_a_warn_when_it_is_not() => RuleCases.Drafted(draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Move(new(0, 185)).Stitch(new(0, 185)).Sew(Column.Upright(new(0, 185), 30, 100)))
        .Finding("stitch.loose-travel").ShouldNotBeNull().Severity.ShouldBe(Severity.Warn);

    /// <summary>Row L44: tie stitches of 1 to 1.5 mm (a shop's page, grade D).</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(15)]
    public void Usual_ties_are_ties(int stitch) => RuleCases.Drafted(draft => draft
        .Sew(Column.Upright(new(0, 0), 30, 100)).Tie(new(0, 0), stitch).Trim(new(80, 0)).Stitch(new(80, 0)).Tie(new(80, 100), stitch).Sew(Column.Upright(new(80, 0), 30, 100)))
        .Finding("stitch.no-tie").ShouldBeNull();

    private static IEnumerable<string> Found(Func<Draft, Draft> sew) => RuleCases.Drafted(sew).Prepare().Findings
        .Where(finding => finding.Rule.StartsWith("stitch.", StringComparison.Ordinal) && finding.State == FindingState.Open)
        .Select(finding => finding.Rule);
}
