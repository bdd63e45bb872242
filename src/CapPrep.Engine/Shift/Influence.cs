using CapPrep.Engine.Shift.Cloth;

namespace CapPrep.Engine.Shift;

/// <summary>A shift of cloth on the cap, mm: across to the right, and from the brim up.</summary>
public readonly record struct ClothShift(double AcrossMm, double UpMm)
{
    /// <summary>Both together.</summary>
    public static ClothShift operator +(ClothShift one, ClothShift other) =>
        new(one.AcrossMm + other.AcrossMm, one.UpMm + other.UpMm);

    internal double Squared => (AcrossMm * AcrossMm) + (UpMm * UpMm);
}

/// <summary>
/// How far the cloth under each element moves when another one is sewn, on one sheet. Two systems are solved per
/// element, for a unit force spread over it across and up; by reciprocity (Betti) the work of a load on such a solution
/// is the mean shift of the element under that load.
/// </summary>
internal sealed class Influence
{
    private const int PerSolve = BandMatrix.Lanes / 2;

    private readonly ClothShift[] _shifts;
    private readonly double[] _give;

    private Influence(IReadOnlyList<double> areas, bool withGive)
    {
        Areas = areas;
        _shifts = new ClothShift[Count * Count];
        _give = withGive ? new double[4 * Count * Count] : [];
    }

    internal int Count => Areas.Count;

    /// <summary>Covered area of each element on the sheet, mm2; 0 beyond its edges.</summary>
    internal IReadOnlyList<double> Areas { get; }

    /// <summary>Shift of the cloth under one element when another is sewn.</summary>
    internal ClothShift On(int element, int sewn) => _shifts[(element * Count) + sewn];

    internal ReadOnlySpan<ClothShift> Shifts => _shifts;

    /// <summary>
    /// Mean shift of one element under a unit force spread over another, mm per N: row 2i for across, 2i + 1 for up.
    /// </summary>
    internal ReadOnlySpan<double> Give => _give;

    /// <param name="sheet">A factored sheet.</param>
    /// <param name="loads">What each element does to it.</param>
    /// <param name="withGive">Whether <see cref="Give"/> is worked out too.</param>
    internal static Influence Of(Sheet sheet, IReadOnlyList<SheetLoad> loads, bool withGive)
    {
        var influence = new Influence([.. loads.Select(load => load.AreaMm2)], withGive);
        Spread[] means = [.. loads.Select(load => sheet.Freed(load.MeanAcross()))];
        Spread[] upward = [.. loads.Select(load => sheet.Freed(load.MeanAcross().MovedBy(1)))];
        Spread[] pulls = [.. loads.Select(load => load.Forces(sheet.Material))];
        for (var first = 0; first < loads.Count; first += PerSolve)
            influence.SolveFor(sheet, first, new(means, upward, pulls));
        return influence;
    }

    private void SolveFor(Sheet sheet, int first, Spreads spreads)
    {
        var count = Math.Min(PerSolve, Count - first);
        var solved = sheet.Solve([.. Enumerable.Range(first, count).SelectMany(item => new[] { spreads.Across[item], spreads.Up[item] })]);
        Span<double> sums = stackalloc double[BandMatrix.Lanes];
        for (var other = 0; other < Count; other++)
        {
            spreads.Pulls[other].Times(solved, sums);
            for (var item = 0; item < count; item++)
                _shifts[((first + item) * Count) + other] = new(sums[2 * item], sums[(2 * item) + 1]);
            if (_give.Length == 0)
                continue;
            spreads.Across[other].Times(solved, sums);
            PutGive(2 * other, first, sums[..(2 * count)]);
            spreads.Up[other].Times(solved, sums);
            PutGive((2 * other) + 1, first, sums[..(2 * count)]);
        }
    }

    private void PutGive(int row, int first, ReadOnlySpan<double> sums) =>
        sums.CopyTo(_give.AsSpan((row * 2 * Count) + (2 * first)));

    private readonly record struct Spreads(Spread[] Across, Spread[] Up, Spread[] Pulls);
}
