using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CapPrep.Engine.Shift;

/// <summary>
/// The same where every element, once sewn, is held by the backing like by a spring on its mean shift. Springs are added
/// one by one to the influences of what is still to be sewn (Woodbury's formula), without factoring the sheet again.
/// All rows and columns stand in sewing order.
/// </summary>
internal sealed class AnchoredDrift
{
    // House: springs of small elements change nothing that can be told.
    private const int MostAnchors = 64;

    private readonly int _count;
    private readonly double[] _give;
    private readonly double[] _shifts;
    private readonly double[] _areas;

    private AnchoredDrift(Influence influence, IReadOnlyList<int> order)
    {
        _count = order.Count;
        _areas = [.. order.Select(element => influence.Areas[element])];
        _give = new double[4 * _count * _count];
        _shifts = new double[2 * _count * _count];
        for (var row = 0; row < 2 * _count; row++)
        {
            var mine = influence.Give.Slice(((2 * order[row / 2]) + (row % 2)) * 2 * _count, 2 * _count);
            for (var place = 0; place < _count; place++)
            {
                var shift = influence.On(order[row / 2], order[place]);
                _shifts[(row * _count) + place] = row % 2 == 0 ? shift.AcrossMm : shift.UpMm;
                mine.Slice(2 * order[place], 2).CopyTo(_give.AsSpan((row * 2 * _count) + (2 * place)));
            }
        }
    }

    /// <summary>How far each element moves after it was sewn, by index of element.</summary>
    /// <param name="influence">Influences with their give.</param>
    /// <param name="order">Indices of the elements.</param>
    /// <param name="anchorNPerMm3">Force by which sewn cloth is held, N per mm2 and mm.</param>
    internal static ClothShift[] After(Influence influence, IReadOnlyList<int> order, double anchorNPerMm3)
    {
        var drift = new AnchoredDrift(influence, order);
        var moved = new ClothShift[influence.Count];
        var least = drift.LeastAnchored();
        for (var place = 0; place < order.Count; place++)
        {
            for (var before = 0; before < place; before++)
                moved[order[before]] += drift.On(before, place);
            if (drift._areas[place] >= least && drift._areas[place] > 0 && anchorNPerMm3 > 0)
                drift.Anchor(place, 1 / (anchorNPerMm3 * drift._areas[place]));
        }

        return moved;
    }

    private double LeastAnchored() => _count <= MostAnchors ? 0 : _areas.OrderDescending().ElementAt(MostAnchors - 1);

    private ClothShift On(int element, int sewn) =>
        new(_shifts[(2 * element * _count) + sewn], _shifts[(((2 * element) + 1) * _count) + sewn]);

    /// <param name="place">What is held from now on.</param>
    /// <param name="gives">How far the spring gives, mm per N.</param>
    private void Anchor(int place, double gives)
    {
        var (across, up) = (GiveFrom(2 * place, place).ToArray(), GiveFrom((2 * place) + 1, place).ToArray());
        var later = place + 1;
        var (shiftAcross, shiftUp) = (ShiftsFrom(2 * place, later).ToArray(), ShiftsFrom((2 * place) + 1, later).ToArray());
        var spring = new Two(across[0] + gives, across[1], up[0], up[1] + gives).Inverse();
        for (var row = 0; row < 2 * _count; row++)
        {
            var mine = GiveFrom(row, place);
            var (first, second) = ((mine[0] * spring.A) + (mine[1] * spring.C), (mine[0] * spring.B) + (mine[1] * spring.D));
            Lessen(mine[2..], first, across.AsSpan(2), second, up.AsSpan(2));
            Lessen(ShiftsFrom(row, later), first, shiftAcross, second, shiftUp);
        }
    }

    private Span<double> GiveFrom(int row, int place) =>
        _give.AsSpan((row * 2 * _count) + (2 * place), 2 * (_count - place));

    private Span<double> ShiftsFrom(int row, int place) => _shifts.AsSpan((row * _count) + place, _count - place);

    /// <summary>Takes two rows, each times a number, from a third.</summary>
    private static void Lessen(Span<double> row, double first, ReadOnlySpan<double> one, double second, ReadOnlySpan<double> other)
    {
        var lanes = Wide(row);
        var ones = Wide(one);
        var others = Wide(other);
        for (var at = 0; at < lanes.Length; at++)
            lanes[at] -= (first * ones[at]) + (second * others[at]);
        for (var at = lanes.Length * Vector256<double>.Count; at < row.Length; at++)
            row[at] -= (first * one[at]) + (second * other[at]);
    }

    private static Span<Vector256<double>> Wide(Span<double> row) => MemoryMarshal.Cast<double, Vector256<double>>(row);

    private static ReadOnlySpan<Vector256<double>> Wide(ReadOnlySpan<double> row) => MemoryMarshal.Cast<double, Vector256<double>>(row);

    /// <summary>Two by two numbers, row by row.</summary>
    private readonly record struct Two(double A, double B, double C, double D)
    {
        internal Two Inverse()
        {
            var determinant = (A * D) - (B * C);
            return new(D / determinant, -B / determinant, -C / determinant, A / determinant);
        }
    }
}
