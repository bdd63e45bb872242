namespace CapPrep.Drawing.Sheets;

/// <summary>The two faces every sheet is set in; both are embedded in this assembly.</summary>
public enum SheetFont
{
    Regular,
    Bold,
}

/// <summary>Em sizes in 0.01 mm.</summary>
internal static class Points
{
    /// <summary>A size given in points of 1/72 inch, to the nearest 0.01 mm.</summary>
    public static int Of(double points) => (int)Math.Round(points * 2540 / 72, MidpointRounding.AwayFromZero);
}
