using CapPrep.Engine.Shift.Cloth;

namespace CapPrep.Engine.Tests.Shift;

/// <summary>A sheet of any size, held anyhow, in parts of which stitches pull evenly.</summary>
internal sealed class Plate(SheetShape shape, SheetMaterial material, Func<double, double, (bool Across, bool Up)> isHeld)
{
    private readonly Sheet _sheet = new(shape, material, isHeld);

    internal Sheet Sheet => _sheet;

    /// <summary>Where every node goes, two numbers each.</summary>
    internal double[] ShiftsBy(Spread forces)
    {
        var solved = _sheet.Solve([_sheet.Freed(forces)]);
        return [.. Enumerable.Range(0, shape.Unknowns).Select(unknown => solved[unknown * BandMatrix.Lanes])];
    }

    internal double[] ShiftsBy(SheetLoad load) => ShiftsBy(load.Forces(material));

    /// <summary>An even strain wherever <paramref name="isSewn"/> says so, in points of a fifth of a square.</summary>
    internal SheetLoad Sewn(Strain strain, Func<double, double, bool> isSewn, int points = 5)
    {
        var load = new SheetLoad(shape);
        var step = shape.MeshMm / points;
        for (var column = 0; column < shape.Columns * points; column++)
        {
            for (var row = 0; row < shape.Rows * points; row++)
            {
                var (x, y) = (shape.LeftMm + ((column + 0.5) * step), shape.BottomMm + ((row + 0.5) * step));
                if (!isSewn(x, y))
                    continue;
                load.Sew(x, y, step * step * strain);
                load.Cover(x, y, step * step);
            }
        }

        return load;
    }

    internal int NodeAt(double x, double y) => shape.NodeAt(
        (int)Math.Round((x - shape.LeftMm) / shape.MeshMm), (int)Math.Round((y - shape.BottomMm) / shape.MeshMm));

    internal double AcrossAt(double[] shifts, double x, double y) => shifts[2 * NodeAt(x, y)];

    internal double UpAt(double[] shifts, double x, double y) => shifts[(2 * NodeAt(x, y)) + 1];
}
