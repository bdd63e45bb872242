using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Drafting;

/// <summary>
/// A satin column between two rails that are walked side by side, from their first points to their last.
/// </summary>
/// <param name="Left">One rail.</param>
/// <param name="Right">The other rail.</param>
public sealed record Column(Way Left, Way Right)
{
    /// <summary>
    /// From one needle point to the next on the same rail, tape units; 0.40 mm is what the trade calls normal
    /// density (common practice, no source).
    /// </summary>
    public int Pitch { get; init; } = 4;

    /// <summary>Stitch length of the center underlay, tape units; 0: no underlay.</summary>
    public int UnderlayStitch { get; init; } = 25;

    /// <summary>An upright column; the foot is the lower end of its left rail.</summary>
    public static Column Upright(TapePoint foot, int width, int height) => new(
        new([foot, foot + new TapePoint(0, height)]),
        new([foot + new TapePoint(width, 0), foot + new TapePoint(width, height)]));

    /// <summary>Sews underlay, if any, and satin; starts and ends on the rails.</summary>
    internal void Sew(Draft draft)
    {
        if (UnderlayStitch > 0)
            Underlay(draft);
        draft.Stitches(Satin());
    }

    /// <summary>Up the middle and back.</summary>
    private void Underlay(Draft draft)
    {
        var middle = new Way([.. Enumerable.Range(0, 9).Select(k => Middle((1 + k) / 10.0))]);
        draft.Stitches(middle.InStitches(UnderlayStitch)).Stitches(middle.Backward().InStitches(UnderlayStitch));
    }

    private TapePoint Middle(double share) => Way.Between(Left.At(share), Right.At(share), 0.5);

    /// <summary>Strokes from rail to rail; two of them advance by the pitch on the longer rail.</summary>
    private IEnumerable<TapePoint> Satin()
    {
        var strokes = Math.Max(1, (int)Math.Round(2 * Math.Max(Left.Length, Right.Length) / Pitch));
        return Enumerable.Range(0, strokes + 1).Select(k => (k % 2 == 0 ? Left : Right).At((double)k / strokes));
    }
}
