using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnBorders;

/// <summary>What is said of borders, and that each is spoken of once; lengths in tape units.</summary>
public sealed class BorderSentenceTests
{
    private static readonly Box Left = new(-330, 0, -50, 200);
    private static readonly Box Right = new(50, 0, 330, 200);

    /// <summary>A border wide enough, so that only its overlap is wrong; it is read to 0.1 mm.</summary>
    [Theory]
    [InlineData(6, "1 fill hardly reaches its border: only 0.5 mm lies under it.")]
    [InlineData(1, "1 fill does not reach under its border.")]
    [InlineData(-4, "1 fill does not reach under its border: a gap of 0.5 mm is left.")]
    public void A_gap_and_a_narrow_overlap_are_told_apart(int overlap, string says) =>
        Said("border.overlap", draft => draft.Bordered(BorderDrafts.Plate, 25, overlap)).ShouldBe(says);

    [Fact]
    public void Two_fills_are_spoken_of_together() =>
        Said("border.overlap", draft => draft.Filled(Left).Filled(Right).ColorStop().Border(Left, 25, 1).Border(Right, 25, 1))
            .ShouldBe("2 fills do not reach under their borders.");

    [Theory]
    [InlineData(false, "A running line outlines a fill; on a cap the two will not meet all round.")]
    [InlineData(true, "A running line outlines a fill; on a cap the two will not meet all round. The same is true of 1 more fill.")]
    public void Outlines_that_are_lines_are_counted(bool both, string says) => Said("border.thin", draft =>
    {
        draft.Filled(Left).Filled(Right).ColorStop().Outlined(Left);
        return both ? draft.Outlined(Right) : draft;
    }).ShouldBe(says);

    /// <summary>To widen a thin border is to give it overlap: one remedy, one finding.</summary>
    [Theory]
    [InlineData(12, true, false)]
    [InlineData(25, false, true)]
    public void A_thin_border_is_not_reported_for_its_overlap_too(int width, bool thin, bool overlap)
    {
        var job = BorderDrafts.Job(draft => draft.Bordered(BorderDrafts.Plate, width, 3));

        (job.Finding("border.thin") is not null).ShouldBe(thin);
        (job.Finding("border.overlap") is not null).ShouldBe(overlap);
    }

    [Fact]
    public void Where_the_shop_does_not_ask_for_width_the_overlap_is_reported()
    {
        var job = BorderDrafts.Job(draft => draft.Bordered(BorderDrafts.Plate, 12, 3)) with
        {
            Book = new() { Id = "shop", Name = "Shop", Rules = [new RuleChange("border.thin") { Off = true }] },
        };

        job.Finding("border.overlap").ShouldNotBeNull();
    }

    private static string? Said(string rule, Func<Draft, Draft> sew) => BorderDrafts.Job(sew).Finding(rule)?.Message;
}
