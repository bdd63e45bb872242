using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Seating;

/// <summary>
/// The largest size at which a design stays below the warn limit of its height and below the warn line of the
/// crown, scaled about the middle of its base.
/// </summary>
/// <param name="points">The design as seated.</param>
/// <param name="seated">Where it lies.</param>
/// <param name="heightMm">Warn limit of the height.</param>
/// <param name="center">x that stays where it is, tape units.</param>
internal sealed class LargestFit(CapPoints points, SeatedDesign seated, double heightMm, int center)
{
    private const int Hundredths = 100;

    private readonly TopLine? _line = TopLine.Warn(seated.Zone);

    /// <summary>A point that stood above the line at the size before; most often it does so again.</summary>
    private int _suspect;

    /// <summary>At most 1, to 0.01 downward; 0 when no size fits.</summary>
    internal double Scale()
    {
        for (var scale = Hundredths; scale > 0; scale--)
        {
            if (FitsHeight(scale) && FitsLine(scale))
                return scale / (double)Hundredths;
        }

        return 0;
    }

    private bool FitsHeight(int scale) =>
        (long)seated.Box.Height * scale <= heightMm * Tenths.PerMillimeter * Hundredths;

    private bool FitsLine(int scale)
    {
        if (_line is null)
            return true;
        if (IsAbove(_suspect, scale))
            return false;
        for (var i = 0; i < points.Count; i++)
        {
            if (!IsAbove(i, scale))
                continue;
            _suspect = i;
            return false;
        }

        return true;
    }

    private bool IsAbove(int point, int scale)
    {
        var x = center + ((double)(points.X[point] - center) * scale / Hundredths);
        var y = seated.Box.Bottom + ((double)(points.Y[point] - seated.Box.Bottom) * scale / Hundredths);
        return y > _line!.At(x) * Tenths.PerMillimeter;
    }
}
