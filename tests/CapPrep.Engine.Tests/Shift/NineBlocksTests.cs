using CapPrep.Engine.Shift;
using CapPrep.Engine.Shift.Cloth;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Shift;

/// <summary>
/// The trade's rule, from the bottom up and from the center out (common practice, no source), against all 362,880
/// orders of nine blocks: it is among the best the sheet knows.
/// </summary>
public sealed class NineBlocksTests
{
    private static readonly int[] UpFromTheCenter = [1, 0, 2, 4, 3, 5, 7, 6, 8];
    private static readonly int[] ColumnsFromTheCenter = [1, 4, 7, 0, 3, 6, 2, 5, 8];
    private static readonly int[] UpLeftToRight = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    private static readonly int[] DownFromTheSides = [6, 8, 7, 3, 5, 4, 0, 2, 1];
    private static readonly int[] DownFromTheCenter = [7, 6, 8, 4, 3, 5, 1, 0, 2];

    [Theory]
    [InlineData(true, false, 0.06)]
    [InlineData(false, false, 0.03)]
    [InlineData(false, true, 0.03)]
    public void Up_from_the_center_is_among_the_best_of_all_orders_with_stitches_along_the_brim(bool isStiff, bool sidesHeld, double share)
    {
        var influence = Blocks.Of(Blocks.Along, isStiff ? SheetMaterial.Even : Blocks.Soft, sidesHeld);
        ShareBetter(influence, UpFromTheCenter).ShouldBeLessThan(share);
        ShareBetter(influence, ColumnsFromTheCenter).ShouldBeLessThan(0.05);
        ShareBetter(influence, DownFromTheSides).ShouldBeGreaterThan(0.6);
    }

    [Fact]
    public void Up_from_the_center_is_the_best_of_all_orders_with_upright_stitches_on_soft_cloth()
    {
        var influence = Blocks.Of(Blocks.Upright, Blocks.Soft);
        ShareBetter(influence, UpFromTheCenter).ShouldBe(0);
        ShareBetter(influence, DownFromTheCenter).ShouldBeGreaterThan(0.98);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Center_out_halves_the_drift_of_rows_sewn_from_left_to_right(bool isStiff)
    {
        var influence = Blocks.Of(Blocks.Along, isStiff ? SheetMaterial.Even : Blocks.Soft);
        (DriftOf(influence, UpFromTheCenter) / DriftOf(influence, UpLeftToRight)).ShouldBeLessThan(0.7);
    }

    [Fact]
    public void Held_by_the_backing_the_best_order_stays_the_best_of_the_five()
    {
        var influence = Blocks.Of(Blocks.Along, Blocks.Soft);
        var drifts = new[] { UpFromTheCenter, UpLeftToRight, DownFromTheSides, DownFromTheCenter }
            .Select(order => Drift.Of(influence, AnchoredDrift.After(influence, order, 0.05)));
        drifts.First().ShouldBe(drifts.Min());
    }

    private static double DriftOf(Influence influence, int[] order) => Drift.Of(influence, Drift.After(influence, order));

    private static double ShareBetter(Influence influence, int[] order)
    {
        var mine = DriftOf(influence, order) * (1 - 1e-9);
        var (better, all) = (0, 0);
        Visit(influence, [.. Enumerable.Range(0, 9)], 0, 0, drift =>
        {
            all++;
            better += drift < mine ? 1 : 0;
        });
        all.ShouldBe(362_880);
        return (double)better / all;
    }

    /// <summary>Builds every order from its end: what an element moves after it was sewn is known as soon as it is placed.</summary>
    private static void Visit(Influence influence, int[] items, int placed, double sum, Action<double> told)
    {
        if (placed == 9)
        {
            told(Math.Sqrt(sum / influence.Areas.Sum()));
            return;
        }

        for (var at = placed; at < 9; at++)
        {
            (items[placed], items[at]) = (items[at], items[placed]);
            var element = items[placed];
            var shift = default(ClothShift);
            for (var later = 0; later < placed; later++)
                shift += influence.On(element, items[later]);
            Visit(influence, items, placed + 1, sum + (influence.Areas[element] * shift.Squared), told);
            (items[placed], items[at]) = (items[at], items[placed]);
        }
    }
}
