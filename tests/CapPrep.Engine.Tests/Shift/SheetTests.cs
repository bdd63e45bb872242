using CapPrep.Engine.Shift.Cloth;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Shift;

/// <summary>
/// The sheet against closed forms of plane elasticity: bar and cantilever after Timoshenko and Goodier, Theory of
/// Elasticity; inclusions after Eshelby (Proc. R. Soc. A 241, 1957, 376), plane stress.
/// </summary>
public sealed class SheetTests
{
    private static readonly SheetShape Bar = new(0, 0, 2.5, 40, 4);

    private static readonly SheetMaterial Stiff = SheetMaterial.Isotropic(1000, 0);

    private static readonly Strain Shorter = new(-0.01, 0, 0);

    [Theory]
    [InlineData(20, 0)]
    [InlineData(35, -0.15)]
    [InlineData(50, -0.30)]
    [InlineData(100, -0.30)]
    public void A_bar_held_at_one_end_follows_what_draws_together(double x, double expected)
    {
        var bar = new Plate(Bar, Stiff, (x, y) => (x <= 0, x <= 0 && y <= 0));

        var shifts = bar.ShiftsBy(bar.Sewn(Shorter, (x, _) => x is > 20 and < 50));

        bar.AcrossAt(shifts, x, 5).ShouldBe(expected, 1e-6);
    }

    /// <summary>A third of the strain is spread over the whole length: e a / L.</summary>
    [Theory]
    [InlineData(20, 0.06)]
    [InlineData(50, -0.15)]
    public void A_bar_held_at_both_ends_is_stretched_beside_it(double x, double expected)
    {
        var bar = new Plate(Bar, Stiff, (x, y) => (x is <= 0 or >= 100, x <= 0 && y <= 0));

        var shifts = bar.ShiftsBy(bar.Sewn(Shorter, (x, _) => x is > 20 and < 50));

        bar.AcrossAt(shifts, x, 5).ShouldBe(expected, 1e-6);
        var stress = 1000 * (bar.AcrossAt(shifts, 20, 5) - bar.AcrossAt(shifts, 10, 5)) / 10;
        stress.ShouldBe(1000 * 0.01 * 30 / 100, 1e-4);
    }

    /// <summary>The patch test: an even strain, held just enough, is followed exactly and leaves no stress.</summary>
    [Fact]
    public void An_even_strain_of_any_cloth_is_followed_exactly()
    {
        var cloth = SheetMaterial.Orthotropic(8, 12, 0.15, 0.3);
        var plate = new Plate(new(0, 0, 5, 8, 6), cloth, (x, y) => (x <= 0 && y <= 0, y <= 0 && x is <= 0 or >= 40 && y <= 0));
        var strain = new Strain(-0.02, 0.005, 0.01);

        var shifts = plate.ShiftsBy(plate.Sewn(strain, (_, _) => true));

        for (double x = 0; x <= 40; x += 5)
        {
            for (double y = 0; y <= 30; y += 5)
            {
                plate.AcrossAt(shifts, x, y).ShouldBe((strain.Across * x) + (strain.Shear * y), 1e-9);
                plate.UpAt(shifts, x, y).ShouldBe(strain.Up * y, 1e-9);
            }
        }
    }

    /// <summary>
    /// Free disk of radius R around an inclusion of radius a: inside and outside it e a2 / 2 times (1 + nu) / r plus
    /// (1 - nu) r / R2; a square plate of 400 mm counts as a disk of R = 220.
    /// </summary>
    [Theory]
    [InlineData(20, -0.0653)]
    [InlineData(40, -0.0331)]
    public void A_round_patch_that_shrinks_draws_the_cloth_around_it(double r, double expected)
    {
        const double strain = -0.02;
        var plate = new Plate(new(-200, -200, 4, 100, 100), SheetMaterial.Isotropic(10, 0.3), HeldInTheMiddle);

        var shifts = plate.ShiftsBy(plate.Sewn(new(strain, strain, 0), (x, y) => (x * x) + (y * y) < 100));

        plate.AcrossAt(shifts, r, 0).ShouldBe(expected, 0.03 * Math.Abs(expected));
        expected.ShouldBe(strain * 100 / 2 * ((1.3 / r) + (0.7 * r / (220 * 220))), 0.0001);
    }

    /// <summary>Inside the circle the strain is even: (5 + nu) / 8 and (3 nu - 1) / 8 of it.</summary>
    [Fact]
    public void A_round_patch_that_shrinks_one_way_is_held_by_the_cloth_around_it()
    {
        const double strain = -0.02;
        const double nu = 0.3;
        var plate = new Plate(new(-200, -200, 4, 100, 100), SheetMaterial.Isotropic(10, nu), HeldInTheMiddle);

        var shifts = plate.ShiftsBy(plate.Sewn(new(strain, 0, 0), (x, y) => (x * x) + (y * y) < 400));

        (plate.AcrossAt(shifts, 8, 0) / 8).ShouldBe((5 + nu) / 8 * strain, 0.03 * 0.01325);
        (plate.UpAt(shifts, 0, 8) / 8).ShouldBe(((3 * nu) - 1) / 8 * strain, 0.0004);
    }

    /// <summary>P L3 / 3 E I + 6 P L / 5 G A = 0.512, from below.</summary>
    [Fact]
    public void A_cantilever_bends_as_far_as_the_beam_formula_says()
    {
        var plate = new Plate(new(0, -10, 1.25, 80, 16), Stiff, (x, _) => (x <= 0, x <= 0));
        var forces = Enumerable.Range(0, 17).ToDictionary(
            row => (2 * plate.NodeAt(100, -10 + (1.25 * row))) + 1,
            row => row is 0 or 16 ? 1.0 / 32 : 1.0 / 16);

        var shifts = plate.ShiftsBy(Spread.Of(forces));

        plate.UpAt(shifts, 100, 0).ShouldBe(0.511, 0.001);
        plate.UpAt(shifts, 100, 0).ShouldBeLessThan(0.512);
    }

    [Fact]
    public void A_sheet_that_nothing_holds_is_no_sheet() =>
        Should.Throw<InvalidOperationException>(() => new Sheet(Bar, Stiff, (_, _) => (false, false)));

    /// <summary>Two nodes of the middle hold it without bearing on it.</summary>
    private static (bool Across, bool Up) HeldInTheMiddle(double x, double y) => (x == 0 && y == 0, y == 0 && x is 0 or 200 && y == 0);
}
