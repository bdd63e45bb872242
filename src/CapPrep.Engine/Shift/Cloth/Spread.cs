using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CapPrep.Engine.Shift.Cloth;

/// <summary>Numbers at a few unknowns of a sheet, sorted by unknown: a load, or the weights of a mean.</summary>
internal sealed class Spread
{
    private readonly int[] _unknowns;
    private readonly double[] _values;

    private Spread(int[] unknowns, double[] values) => (_unknowns, _values) = (unknowns, values);

    internal bool IsEmpty => _unknowns.Length == 0;

    internal static Spread Of(IReadOnlyDictionary<int, double> values)
    {
        int[] unknowns = [.. values.Keys.Order()];
        return new(unknowns, [.. unknowns.Select(unknown => values[unknown])]);
    }

    /// <summary>Moves every place by so many unknowns.</summary>
    internal Spread MovedBy(int unknowns) => new([.. _unknowns.Select(unknown => unknown + unknowns)], _values);

    /// <summary>Without what lies at unknowns that are held.</summary>
    internal Spread Without(bool[] held)
    {
        int[] kept = [.. Enumerable.Range(0, _unknowns.Length).Where(at => !held[_unknowns[at]])];
        return new([.. kept.Select(at => _unknowns[at])], [.. kept.Select(at => _values[at])]);
    }

    internal void PutInto(Span<double> sides, int lane)
    {
        for (var at = 0; at < _unknowns.Length; at++)
            sides[(_unknowns[at] * BandMatrix.Lanes) + lane] = _values[at];
    }

    /// <summary>Sum of its numbers times those of each of eight solutions.</summary>
    internal void Times(ReadOnlySpan<double> solutions, Span<double> sums)
    {
        var lanes = MemoryMarshal.Cast<double, Vector256<double>>(solutions);
        var (left, right) = (Vector256<double>.Zero, Vector256<double>.Zero);
        for (var at = 0; at < _unknowns.Length; at++)
        {
            var factor = Vector256.Create(_values[at]);
            left += factor * lanes[2 * _unknowns[at]];
            right += factor * lanes[(2 * _unknowns[at]) + 1];
        }

        left.CopyTo(sums);
        right.CopyTo(sums[4..]);
    }
}
