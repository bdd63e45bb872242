namespace CapPrep.Engine.Shift.Cloth;

/// <summary>A sheet of cloth that is held at some places: its stiffness, factored once, and what loads do to it.</summary>
internal sealed class Sheet
{
    private readonly BandMatrix _matrix;
    private readonly bool[] _held;

    /// <param name="shape">Mesh.</param>
    /// <param name="material">Cloth.</param>
    /// <param name="isHeld">Whether a node at x, y mm cannot move, across and up.</param>
    /// <param name="groundNPerMm3">What backing and needle plate hold everywhere, N per mm2 and mm.</param>
    internal Sheet(SheetShape shape, SheetMaterial material, Func<double, double, (bool Across, bool Up)> isHeld, double groundNPerMm3 = 0)
    {
        (Shape, Material) = (shape, material);
        _matrix = new(shape.Unknowns, shape.Band);
        _held = HeldUnknowns(shape, isHeld);
        Assemble(Square.StiffnessOf(material, shape.MeshMm, groundNPerMm3));
        for (var unknown = 0; unknown < _held.Length; unknown++)
        {
            if (_held[unknown])
                _matrix.Hold(unknown);
        }

        _matrix.Factor();
    }

    internal SheetShape Shape { get; }

    internal SheetMaterial Material { get; }

    /// <summary>What lies at held unknowns does no work.</summary>
    internal Spread Freed(Spread load) => load.Without(_held);

    /// <summary>Eight solutions at once, unknown by unknown eight numbers side by side; missing ones are 0.</summary>
    internal double[] Solve(ReadOnlySpan<Spread> loads)
    {
        var sides = new double[Shape.Unknowns * BandMatrix.Lanes];
        for (var lane = 0; lane < loads.Length; lane++)
            loads[lane].PutInto(sides, lane);
        _matrix.Solve(sides);
        return sides;
    }

    private static bool[] HeldUnknowns(SheetShape shape, Func<double, double, (bool Across, bool Up)> isHeld)
    {
        var held = new bool[shape.Unknowns];
        for (var node = 0; node < shape.Nodes; node++)
        {
            var (x, y) = shape.PositionOf(node);
            (held[2 * node], held[(2 * node) + 1]) = isHeld(x, y);
        }

        return held;
    }

    private void Assemble(double[] stiffness)
    {
        for (var square = 0; square < Shape.Squares; square++)
        {
            var (a, b, c, d) = Shape.CornersOf(square);
            int[] unknowns = [2 * a, (2 * a) + 1, 2 * b, (2 * b) + 1, 2 * c, (2 * c) + 1, 2 * d, (2 * d) + 1];
            for (var row = 0; row < Square.Unknowns; row++)
            {
                for (var column = 0; column < Square.Unknowns; column++)
                {
                    if (unknowns[row] >= unknowns[column])
                        _matrix.Add(unknowns[row], unknowns[column], stiffness[(row * Square.Unknowns) + column]);
                }
            }
        }
    }
}
