using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CapPrep.Engine.Shift.Cloth;

/// <summary>
/// A symmetric positive definite matrix with a narrow band, factored in place after Cholesky (Golub and Van Loan,
/// Matrix Computations, section 4.3). Sums run in a fixed order, so every machine gets the same digits.
/// </summary>
internal sealed class BandMatrix
{
    /// <summary>Right-hand sides that are solved at once.</summary>
    internal const int Lanes = 8;

    // What is left of a diagonal by rounding alone.
    private const double Loose = 1e-10;

    private readonly int _size;
    private readonly int _band;
    private readonly double[] _rows;
    private bool _isFactored;

    internal BandMatrix(int size, int band) => (_size, _band, _rows) = (size, band, new double[size * (band + 1)]);

    /// <summary>Adds to a place on or under the diagonal.</summary>
    internal void Add(int row, int column, double value) => _rows[At(row, column)] += value;

    /// <summary>Lets an unknown stay 0.</summary>
    internal void Hold(int unknown)
    {
        for (var column = Math.Max(0, unknown - _band); column < unknown; column++)
            _rows[At(unknown, column)] = 0;
        for (var row = unknown + 1; row <= Math.Min(_size - 1, unknown + _band); row++)
            _rows[At(row, unknown)] = 0;
        _rows[At(unknown, unknown)] = 1;
    }

    /// <exception cref="InvalidOperationException">Something of the sheet is not held.</exception>
    internal void Factor()
    {
        for (var row = 0; row < _size; row++)
        {
            var first = Math.Max(0, row - _band);
            for (var column = first; column <= row; column++)
                _rows[At(row, column)] = Reduced(row, column, first);
        }

        _isFactored = true;
    }

    private double Reduced(int row, int column, int first)
    {
        var from = Math.Max(first, column - _band);
        var mine = _rows.AsSpan(At(row, from), column - from);
        var other = _rows.AsSpan(At(column, from), column - from);
        var whole = _rows[At(row, column)];
        var sum = whole;
        for (var at = 0; at < mine.Length; at++)
            sum -= mine[at] * other[at];
        if (row != column)
            return sum / _rows[At(column, column)];
        return sum > Loose * whole ? Math.Sqrt(sum) : throw new InvalidOperationException("The sheet is not held.");
    }

    /// <summary>Solves for eight right-hand sides, unknown by unknown eight numbers side by side, in place.</summary>
    internal void Solve(Span<double> sides)
    {
        if (!_isFactored)
            throw new InvalidOperationException("The matrix is not factored.");
        var lanes = MemoryMarshal.Cast<double, Vector256<double>>(sides);
        for (var row = 0; row < _size; row++)
            Forward(row, lanes);
        for (var row = _size - 1; row >= 0; row--)
            Backward(row, lanes);
    }

    private void Forward(int row, Span<Vector256<double>> lanes)
    {
        var first = Math.Max(0, row - _band);
        var factors = _rows.AsSpan(At(row, first), row - first);
        var (left, right) = (lanes[2 * row], lanes[(2 * row) + 1]);
        for (var at = 0; at < factors.Length; at++)
        {
            var factor = Vector256.Create(factors[at]);
            left -= factor * lanes[2 * (first + at)];
            right -= factor * lanes[(2 * (first + at)) + 1];
        }

        var diagonal = Vector256.Create(_rows[At(row, row)]);
        (lanes[2 * row], lanes[(2 * row) + 1]) = (left / diagonal, right / diagonal);
    }

    private void Backward(int row, Span<Vector256<double>> lanes)
    {
        var diagonal = Vector256.Create(_rows[At(row, row)]);
        var (left, right) = (lanes[2 * row] / diagonal, lanes[(2 * row) + 1] / diagonal);
        (lanes[2 * row], lanes[(2 * row) + 1]) = (left, right);
        var first = Math.Max(0, row - _band);
        var factors = _rows.AsSpan(At(row, first), row - first);
        for (var at = 0; at < factors.Length; at++)
        {
            var factor = Vector256.Create(factors[at]);
            lanes[2 * (first + at)] -= factor * left;
            lanes[(2 * (first + at)) + 1] -= factor * right;
        }
    }

    private int At(int row, int column) => (row * (_band + 1)) + column - row + _band;
}
