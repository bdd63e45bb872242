using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Letters;

/// <summary>How exactly letters of a height stand on their line and reach their level; sixteenths of a tape unit.</summary>
internal static class Tolerance
{
    private const int Least = 35 * Fine.PerTenth / 10;

    /// <summary>At the base line: 0.35 mm, 5 % of the height from 7 mm on.</summary>
    public static int Base(int height) => Math.Max(Least, height / 20);

    /// <summary>At the tops: 0.35 mm, 7 % of the height from 5 mm on.</summary>
    public static int Top(int height) => Math.Max(Least, height * 7 / 100);
}
