using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches;

/// <summary>The same stitches elsewhere on the tape, mirrored or turned are the same faults.</summary>
public sealed class MovedDesignTests
{
    private static readonly Gen<(Draft Design, TapePoint Shift)> Designs =
        from dx in Gen.Int[2, 4]
        from dy in Gen.Int[2, 4]
        from x in Gen.Int[0, 60]
        from y in Gen.Int[0, 60]
        from stitch in Gen.Int[3, 5]
        from shift in Gen.Select(Gen.Int[-300, 300], Gen.Int[-300, 300])
        select (Faulty(dx, dy, x, y, stitch), new TapePoint(shift.Item1, shift.Item2));

    [Fact]
    public void A_shift_on_the_tape_changes_no_finding() => Designs.Sample(
        drawn => Told(drawn.Design, at => at + drawn.Shift).ShouldBe(Told(drawn.Design, at => at)), iter: 30);

    [Fact]
    public void A_mirrored_design_has_mirrored_places() => Designs.Sample(
        drawn => Told(drawn.Design, at => at with { X = -at.X }).ShouldBe(Told(drawn.Design, at => at, mirrored: true)), iter: 30);

    [Fact]
    public void A_turned_tape_that_says_so_changes_no_finding() => Designs.Sample(
        drawn => Told(drawn.Design, at => at.Turned(), TapeOrientation.Turned).ShouldBe(Told(drawn.Design, at => at)), iter: 30);

    /// <summary>A dense spot, a long stitch and a line of short ones inside a box of even size.</summary>
    private static Draft Faulty(int dx, int dy, int x, int y, int stitch) => new Draft()
        .Run(25, new TapePoint(0, 0), new TapePoint(400, 0), new TapePoint(400, 240))
        .Trim(new(x, 20 + y)).Grid(dx, dy, 60, 50, x, 20 + y)
        .Trim(new(200, 40)).Run(85, new TapePoint(200, 40), new TapePoint(370, 40))
        .Trim(new(200, 100 + x)).Run(stitch, new TapePoint(200, 100 + x), new TapePoint(260, 100 + x));

    private static string[] Told(
        Draft design, Func<TapePoint, TapePoint> move, TapeOrientation? tapeIs = null, bool mirrored = false)
    {
        var tape = Stitched.Of(design.Moves.Select(record => new TapeMove(record.Kind, move(record.To))));
        var job = Job.Clean with { Tape = tape, Ticket = Job.Clean.Ticket with { TapeIs = tapeIs } };
        return
        [
            .. job.Prepare().Findings
                .Where(finding => finding.Rule.StartsWith("stitch.", StringComparison.Ordinal))
                .SelectMany(finding => finding.Places.Select(place => Told(finding, place, mirrored)))
                .Order(StringComparer.Ordinal),
        ];
    }

    private static string Told(Finding finding, Place place, bool mirrored)
    {
        var box = place.BoxMm!.Value;
        var (left, right) = mirrored ? (-box.Right, -box.Left) : (box.Left, box.Right);
        return FormattableString.Invariant(
            $"{finding.Rule} {finding.Severity} {finding.Count} {place.Measured} {place.Stitches} {left + 0.0:0.00} {right + 0.0:0.00} {box.Bottom:0.00} {box.Top:0.00}");
    }
}
