using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>The parts of an applique along one oval, 40 mm wide and 30 mm high about the seam; sizes in mm.</summary>
internal static class AppliqueDrafts
{
    private const double HalfWidth = 20;
    private const double HalfHeight = 15;
    private const double Middle = 20;

    /// <summary>Placement line, stop, tack-down, stop to trim, satin: two stops of one thread.</summary>
    internal static readonly Job Good = Applique(draft => draft.Line().Stop().Line(-0.5).Stop().Cover(), OneThread(3));

    /// <summary>The same with another satin.</summary>
    internal static Job Covered(double width, double outward = 0) =>
        Applique(draft => draft.Line().Stop().Line().Stop().Cover(width, outward), OneThread(3));

    /// <summary>Once around in running stitches.</summary>
    /// <param name="draft">What is sewn so far.</param>
    /// <param name="outward">How far outside the oval.</param>
    /// <param name="share">How much of the way around.</param>
    internal static Draft Line(this Draft draft, double outward = 0, double share = 1) =>
        draft.Run(25, [.. Enumerable.Range(0, 73).Select(k => At(share * k / 72, outward))]);

    /// <summary>Once around in an open zigzag, as wide as given.</summary>
    internal static Draft Net(this Draft draft, double width = 1.8) =>
        draft.Stitches(Enumerable.Range(0, 93).Select(k => At(k / 92.0, k % 2 == 0 ? width / 2 : -width / 2)));

    /// <summary>Once around in satin whose middle lies so far outside the oval.</summary>
    internal static Draft Cover(this Draft draft, double width = 3.6, double outward = 0)
    {
        const int rows = 560;
        return draft.Stitches(Enumerable.Range(0, rows + 1).Select(k => At((double)k / rows, outward + (k % 2 == 0 ? width / 2 : -width / 2))));
    }

    /// <summary>A small fill above the oval.</summary>
    internal static Draft Flat(this Draft draft) => draft.Move(new(-50, 380)).Stitch(new(-50, 380)).Sew(Fill.Of(new Box(-50, 380, 50, 420)));

    /// <summary>A stop for the operator; the needle moves back to where the oval begins.</summary>
    internal static Draft Stop(this Draft draft) => draft.ColorStop().Move(At(0, 0));

    internal static Draft Cut(this Draft draft) => draft.Trim(At(0, 0));

    internal static Job Applique(Func<Draft, Draft> sew, params IReadOnlyList<TicketThread> threads) =>
        FoamDrafts.Said(Technique.Applique, sew, threads);

    internal static IReadOnlyList<TicketThread> OneThread(int blocks) =>
        [.. Enumerable.Range(1, blocks).Select(block => new TicketThread { Block = block, Name = "Navy" })];

    private static TapePoint At(double share, double outward) => FoamDrafts.At(
        (HalfWidth + outward) * Math.Cos(2 * Math.PI * share), Middle + ((HalfHeight + outward) * Math.Sin(2 * Math.PI * share)));
}
