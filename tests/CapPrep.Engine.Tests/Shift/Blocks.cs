using CapPrep.Engine.Shift;
using CapPrep.Engine.Shift.Cloth;

namespace CapPrep.Engine.Tests.Shift;

/// <summary>Three rows of three blocks on a cap front, 30 by 14 mm each, all stitches one way.</summary>
internal static class Blocks
{
    internal static readonly SheetShape Front = new(-90, 0, 5, 36, 22);

    private static readonly double[] Columns = [-40, 0, 40];
    private static readonly double[] Rows = [15, 37, 59];

    internal static readonly Strain Along = new(-0.03, 0.006, 0);
    internal static readonly Strain Upright = new(0.006, -0.03, 0);

    internal static readonly SheetMaterial Soft = SheetMaterial.Orthotropic(8, 12, 0.15, 0.3);

    internal static Sheet Sheet(SheetMaterial material, bool sidesHeld = false) => new(Front, material, (x, y) =>
    {
        var held = y <= 0 || (sidesHeld && Math.Abs(x) >= 90 && y < 45);
        return (held, held);
    });

    /// <summary>Row by row from the brim up, left to right.</summary>
    internal static IReadOnlyList<SheetLoad> Nine(Strain strain) =>
        [.. Rows.SelectMany(y => Columns.Select(x => Block(x, y, strain)))];

    internal static SheetLoad Block(double x, double y, Strain strain)
    {
        var load = new SheetLoad(Front);
        for (var across = -14.5; across < 15; across++)
        {
            for (var up = -6.5; up < 7; up++)
            {
                load.Cover(x + across, y + up, 1);
                load.Sew(x + across, y + up, strain);
            }
        }

        return load;
    }

    internal static Influence Of(Strain strain, SheetMaterial material, bool sidesHeld = false) =>
        Influence.Of(Sheet(material, sidesHeld), Nine(strain), withGive: true);
}
