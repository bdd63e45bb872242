using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Seating;

namespace CapPrep.Drawing.Proofs;

/// <summary>Where the stitches of a small picture come to lie: the whole design, as it stands on the cap, true to shape.</summary>
/// <param name="Window">What it fills at most.</param>
/// <param name="Percent">Of true size, 1 to 100.</param>
internal sealed record SmallView(SheetBox Window, Box Design, int Percent, SeatedDesign? Seating)
{
    /// <summary>Left free around the window for numbers beside the design, 0.01 mm.</summary>
    public const int Edge = 330;
    private const int PerTapeUnit = 10;

    /// <summary>As large as the window takes, in whole percent.</summary>
    public static SmallView Fit(SheetBox window, Preparation preparation)
    {
        var design = preparation.Seating?.Box ?? preparation.Facts.Extents;
        var percent = Math.Min(
            Percents(window.Width, (long)design.Right - design.Left), Percents(window.Height, (long)design.Top - design.Bottom));
        return new SmallView(window, design, (int)Math.Clamp(percent, 1, 100), preparation.Seating);
    }

    /// <summary>Where a needle point of the received tape lies.</summary>
    public SheetPoint At(TapePoint received)
    {
        var point = Seating?.OnCap(received) ?? received;
        return Window.Center.Move(
            Scaled((2.0 * point.X) - Design.Left - Design.Right), -Scaled((2.0 * point.Y) - Design.Bottom - Design.Top));
    }

    /// <summary>Where a box of the received tape lies.</summary>
    public SheetBox Box(Box received)
    {
        var (a, b) = (At(new TapePoint(received.Left, received.Bottom)), At(new TapePoint(received.Right, received.Top)));
        return new SheetBox(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Abs(a.X - b.X), Math.Abs(a.Y - b.Y));
    }

    /// <summary>A length of the design on the sheet, 0.01 mm.</summary>
    public int Length(int hundredths) => hundredths * Percent / 100;

    private int Scaled(double twiceFromMiddle) =>
        (int)Math.Round(twiceFromMiddle / 2 * PerTapeUnit * Percent / 100, MidpointRounding.AwayFromZero);

    private static long Percents(int room, long units) => 100L * room / Math.Max(1, units * PerTapeUnit);
}
