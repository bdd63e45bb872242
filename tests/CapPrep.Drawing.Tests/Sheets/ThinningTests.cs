using CapPrep.Drawing.Sheets;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Sheets;

public class ThinningTests
{
    [Fact]
    public void Points_on_a_straight_line_are_left_out() =>
        Thinning.Reduce([new(0, 0), new(100, 3), new(200, -4), new(300, 0), new(300, 500)], 10)
            .ShouldBe([new(0, 0), new(300, 0), new(300, 500)]);

    [Fact]
    public void A_line_that_runs_back_on_itself_keeps_its_turn() =>
        Thinning.Reduce([new(0, 0), new(500, 0), new(200, 0)], 10).ShouldBe([new(0, 0), new(500, 0), new(200, 0)]);

    [Fact]
    public void No_point_left_out_is_farther_away_than_the_tolerance() =>
        Gen.Int[-2000, 2000].Select(Gen.Int[-2000, 2000], (x, y) => new SheetPoint(x, y)).List[2, 700].Sample(
            line =>
            {
                var kept = Thinning.Reduce(line, 200);
                kept[0].ShouldBe(line[0]);
                kept[^1].ShouldBe(line[^1]);
                foreach (var point in line)
                    Distance(kept, point).ShouldBeLessThanOrEqualTo(200.01);
            },
            iter: 30,
            threads: 1);

    private static double Distance(IReadOnlyList<SheetPoint> line, SheetPoint point) =>
        line.Zip(line.Skip(1), (a, b) => ToPiece(a, b, point)).Prepend(Hypot(line[0], point)).Min();

    private static double ToPiece(SheetPoint a, SheetPoint b, SheetPoint p)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y;
        var length = (dx * dx) + (dy * dy);
        var share = length == 0 ? 0 : Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / length, 0, 1);
        return Math.Sqrt(Math.Pow(a.X + (share * dx) - p.X, 2) + Math.Pow(a.Y + (share * dy) - p.Y, 2));
    }

    private static double Hypot(SheetPoint a, SheetPoint b) =>
        Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2));
}
