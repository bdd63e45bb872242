using CapPrep.Engine.Checks.OnBorders;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tests.Pieces;
using CsCheck;
using NetTopologySuite.Geometries;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnBorders;

/// <summary>Borders against the polygons they are drafted from, measured by the geometry library.</summary>
public sealed class EdgeRowTests
{
    // Tapes are written in tenths of a millimeter, cells are 0.25 mm wide.
    private const double Room = 0.2;

    [Fact]
    public void Width_and_overlap_are_those_of_the_polygons() =>
        Gen.Select(Gen.Int[200, 400], Gen.Int[35, 75], Gen.Int[16, 40], Gen.Int[-3, 15]).Sample((width, rowsOfFill, border, overlap) =>
        {
            var box = new Box(-width / 2, 0, width / 2, 4 * rowsOfFill);
            var rows = Rows(box, border, overlap);
            var (fill, inner, outer) = (Polygon(box), Polygon(BorderDrafts.Grown(box, -overlap)), Polygon(BorderDrafts.Grown(box, border - overlap)));

            EdgeRow.Quantile(rows, 0.5, row => row.WidthMm).ShouldBe(outer.Boundary.Distance(inner.Boundary) / 10, Room);
            EdgeRow.Quantile(rows, 0.5, row => row.OverlapMm).ShouldBe(SignedDistance(fill, inner) / 10, Room);
            EdgeRow.Quantile(rows, 0.2, row => row.OverlapMm).ShouldBe(SignedDistance(fill, inner) / 10, Room);
            EdgeRow.LengthMm(rows).ShouldBeInRange(0.9 * inner.Boundary.Length / 10, 1.05 * outer.Boundary.Length / 10);
        }, iter: 40);

    /// <summary>Fact row L37: "satin border over a fill, 2 mm wide, at least 1 mm of overlap".</summary>
    [Fact]
    public void The_published_border_is_measured_as_published()
    {
        var rows = Rows(BorderDrafts.Plate, 20, 10);

        EdgeRow.Quantile(rows, 0.5, row => row.WidthMm).ShouldBe(2, 0.05);
        EdgeRow.Quantile(rows, 0.2, row => row.OverlapMm).ShouldBe(1, 0.15);
    }

    [Fact]
    public void The_rim_has_the_length_of_the_polygon() =>
        Gen.Select(Gen.Int[140, 400], Gen.Int[140, 300]).Sample((width, height) =>
        {
            var box = new Box(0, 0, width, height);
            var fill = Read.Of(new Draft().Filled(box)).Pieces.Single(piece => piece.Class == StitchClass.Fill);

            (new Rim(Rim.Closed(fill.Blanket)).Cells / 4.0).ShouldBe(Polygon(box).Boundary.Length / 10, 0.06 * Polygon(box).Boundary.Length / 10);
        }, iter: 20);

    [Theory]
    [InlineData(0, true)]
    [InlineData(5, true)]
    [InlineData(-5, true)]
    [InlineData(12, false)]
    [InlineData(-12, false)]
    public void A_line_half_a_millimeter_beside_the_rim_follows_it_and_one_farther_off_does_not(int outside, bool expected)
    {
        var fill = Read.Of(new Draft().Filled(BorderDrafts.Plate)).Pieces.Single(piece => piece.Class == StitchClass.Fill);
        var rim = new Rim(Rim.Closed(fill.Blanket));

        rim.IsNear(new(BorderDrafts.Plate.Right + outside, 100)).ShouldBe(expected);
    }

    private static IReadOnlyList<EdgeRow> Rows(Box box, int width, int overlap)
    {
        var draft = new Draft().Bordered(box, width, overlap);
        var pieces = Read.Of(draft).Pieces;
        var fill = pieces.Single(piece => piece.Class == StitchClass.Fill);
        Piece[] parts = [.. pieces.Where(piece => piece.Block == 2)];
        return EdgeRows.Of(new Border(fill, parts, Rim.Closed(fill.Blanket)), Read.Stitches(draft));
    }

    private static double SignedDistance(Polygon fill, Polygon inner) =>
        fill.Boundary.Distance(inner.Boundary) * (fill.Contains(inner) ? 1 : -1);

    private static Polygon Polygon(Box box) => new(new LinearRing(
    [
        new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top), new(box.Left, box.Bottom),
    ]));
}
