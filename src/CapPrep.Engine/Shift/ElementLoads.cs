using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Shift.Cloth;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Shift;

/// <summary>
/// What each element does to the cloth: every stitch draws it together along itself by a share of its own length and
/// pushes it apart across. Rows that turn need no rule of their own, since every stitch pulls where it lies.
/// </summary>
internal sealed class ElementLoads
{
    // Thread per area at which the strains of a style hold, mm per mm2: rows 0.40 mm apart, and satin of that pitch.
    private const double FillThreadPerAreaMm = 2.5;
    private const double SatinThreadPerAreaMm = 5;

    // From memory: beyond so much more thread the cloth is full and gives no more.
    private const double MostFullness = 1.6;

    private const double LongestPartMm = 2.5;
    private const double CellMm = 1.0 / Cover.CellsPerMillimeter;

    private readonly StitchSequence _stitches;
    private readonly CapPoints _points;
    private readonly SheetStiffness _cloth;
    private readonly bool[] _isSatin;

    private ElementLoads(StitchSequence stitches, CapPoints points, DesignReading reading, SheetStiffness cloth)
    {
        (_stitches, _points, _cloth) = (stitches, points, cloth);
        _isSatin = new bool[stitches.Count];
        foreach (var piece in reading.Pieces.Where(piece => piece.Class == StitchClass.Satin))
            _isSatin.AsSpan(piece.First, piece.Last - piece.First + 1).Fill(true);
    }

    /// <summary>One load per element, in received order.</summary>
    internal static IReadOnlyList<SheetLoad> Of(
        StitchSequence stitches, SeatedDesign seated, DesignReading reading, FourSheets sheets)
    {
        var loads = new ElementLoads(stitches, CapPoints.Of(stitches, seated), reading, sheets.Cloth);
        var placement = Placement.Of(seated);
        return [.. reading.Elements.Select(element => loads.Of(element, placement, sheets.Sheets[0].Shape))];
    }

    private SheetLoad Of(Element element, Placement placement, SheetShape shape)
    {
        var load = new SheetLoad(shape);
        foreach (var cell in MassMap.Of(element, placement).Cells)
            load.Cover(MiddleOf(cell.X), MiddleOf(cell.Y), cell.Mass * CellMm * CellMm);
        for (var at = element.First + 1; at <= element.Last; at++)
        {
            if (_stitches.Relations[at] == Relation.Thread && _stitches.Jumps[at] == 0)
                Sew(load, _points.At(at - 1), _points.At(at), _isSatin[at]);
        }

        foreach (var square in load.PulledSquares.ToArray())
            load.Weaken(square, Fullness(load, square));
        return load;
    }

    private static double MiddleOf(int cell) => (2 * cell) + 1;

    /// <summary>A stitch in parts, each at its middle: (-e1, e2) along and across it, turned to the cap.</summary>
    private void Sew(SheetLoad load, TapePoint from, TapePoint to, bool isSatin)
    {
        var (across, up) = ((to.X - from.X) / (double)Tenths.PerMillimeter, (to.Y - from.Y) / (double)Tenths.PerMillimeter);
        var length = Math.Sqrt((across * across) + (up * up));
        if (length == 0)
            return;
        var parts = (int)(length / LongestPartMm) + 1;
        var pull = (isSatin ? _cloth.E1Satin / SatinThreadPerAreaMm : _cloth.E1Fill / FillThreadPerAreaMm) * length / parts;
        var strain = pull * Along(across / length, up / length, _cloth.E2OverE1);
        for (var part = 0; part < parts; part++)
        {
            var share = (part + 0.5) / parts;
            load.Sew((from.X / (double)Tenths.PerMillimeter) + (share * across), (from.Y / (double)Tenths.PerMillimeter) + (share * up), strain);
        }
    }

    /// <summary>The strain diag(-1, ratio) along a direction, in the axes of the cap (rotation of a tensor).</summary>
    private static Strain Along(double across, double up, double ratio) => new(
        (ratio * up * up) - (across * across),
        (ratio * across * across) - (up * up),
        -2 * (1 + ratio) * across * up);

    /// <summary>Below 1 where the cloth is full.</summary>
    private double Fullness(SheetLoad load, int square)
    {
        var most = MostFullness * Math.Max(_cloth.E1Fill, _cloth.E1Satin) * (1 - _cloth.E2OverE1) * load.AreaIn(square);
        var pulled = load.PullIn(square);
        return pulled > most ? most / pulled : 1;
    }
}
