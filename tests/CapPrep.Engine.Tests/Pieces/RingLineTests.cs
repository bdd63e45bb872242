using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class RingLineTests
{
    [Fact]
    public void A_spiral_without_cloth_between_its_turns_is_ring_lines()
    {
        var reading = Read.Of(Spiral(new Draft(), turns: 12, spacing: 4));

        var piece = reading.Pieces.ShouldHaveSingleItem();
        piece.Class.ShouldBe(StitchClass.DenseRunning);
        piece.Sure.ShouldBeTrue();
        // Lines 0.4 mm apart: 2.5 mm of thread on each square millimeter.
        piece.ThreadPerAreaMm.ShouldBe(2.5, 0.3);
        reading.Elements.ShouldHaveSingleItem().Kind.ShouldBe(ElementKind.DenseRunning);
        reading.AssignedShare.ShouldBe(1);
    }

    [Fact]
    public void A_spiral_with_cloth_between_its_turns_stays_a_line() =>
        Read.Of(Spiral(new Draft(), turns: 8, spacing: 12)).Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Running);

    [Fact]
    public void Turns_at_the_widest_spacing_are_ring_lines_in_doubt()
    {
        var piece = Read.Of(Spiral(new Draft(), turns: 12, spacing: 7)).Pieces.MaxBy(piece => piece.Last - piece.First).ShouldNotBeNull();

        (piece.Class, piece.Sure).ShouldBe((StitchClass.DenseRunning, false));
    }

    [Fact]
    public void Two_lines_beside_each_other_are_lines() =>
        Read.Of(Rings(new Draft(), 100, 105)).Pieces.ShouldAllBe(piece => piece.Class == StitchClass.Running);

    [Fact]
    public void Rings_with_jumps_between_them_are_one_piece()
    {
        var reading = Read.Of(Rings(new Draft(), [.. Enumerable.Range(0, 14).Select(k => 20 + (5 * k))]));

        reading.Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.DenseRunning);
        reading.Elements.Count.ShouldBe(1);
    }

    [Fact]
    public void Rings_of_one_block_may_be_cut_apart()
    {
        int[] radii = [.. Enumerable.Range(0, 14).Select(k => 20 + (5 * k))];

        Read.Of(Rings(new Draft(), trims: true, radii)).Pieces.ShouldAllBe(piece => piece.Class == StitchClass.DenseRunning);
    }

    [Fact]
    public void Only_the_rings_are_cut_out_of_a_line()
    {
        var draft = Spiral(new Draft().Run(25, Read.At(-600, 0), Read.At(-60, 0)), turns: 12, spacing: 4);
        var reading = Read.Of(draft.Run(25, draft.At, Read.At(600, 0)));

        reading.Pieces.Select(piece => piece.Class)
            .ShouldBe([StitchClass.Running, StitchClass.DenseRunning, StitchClass.Running]);
    }

    [Fact]
    public void Ring_lines_hide_the_way_under_them()
    {
        var draft = Spiral(new Draft().Run(25, Read.At(-40, 0), Read.At(40, 0)), turns: 12, spacing: 4);

        Read.Of(draft).Spans[0].Role.ShouldBeOneOf(SpanRole.HiddenTravel, SpanRole.Underlay);
    }

    [Fact]
    public void Three_lines_under_a_column_carry_it()
    {
        var draft = new Draft();
        foreach (var x in new[] { 3, 8, 13 })
            draft.Run(20, Read.At(x, x == 8 ? 250 : 0), Read.At(x, x == 8 ? 0 : 250));
        draft.Sew(Column.Upright(Read.At(0, 0), 16, 250) with { UnderlayStitch = 0 });
        var reading = Read.Of(draft);

        reading.Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Satin);
    }

    private static Draft Spiral(Draft draft, int turns, int spacing)
    {
        const int perTurn = 24;
        for (var k = 0; k <= turns * perTurn; k++)
            draft.Stitch(OnRing((double)spacing * k / perTurn, k, perTurn));
        return draft;
    }

    private static Draft Rings(Draft draft, params int[] radii) => Rings(draft, trims: false, radii);

    private static Draft Rings(Draft draft, bool trims, params int[] radii)
    {
        foreach (var radius in radii)
        {
            var start = OnRing(radius, 0, 1);
            if (trims && draft.Moves.Count > 0)
                draft.Trim(start);
            else
                draft.Move(start);
            var stitches = Math.Max(8, radius / 3);
            for (var k = 0; k <= stitches; k++)
                draft.Stitch(OnRing(radius, k, stitches));
        }

        return draft;
    }

    private static TapePoint OnRing(double radius, int k, int perTurn)
    {
        var (sine, cosine) = Math.SinCos(2 * Math.PI * k / perTurn);
        return Read.At((int)Math.Round(radius * cosine), (int)Math.Round(radius * sine));
    }
}
