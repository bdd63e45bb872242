using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>The line that letters stand on: straight, or a circle's arc.</summary>
/// <param name="Foot">Where the line passes over x of its middle.</param>
/// <param name="Radius">mm; 0: straight. Above 0 the line is highest in its middle, below 0 lowest.</param>
/// <param name="Tilt">Degrees, of a straight line.</param>
internal readonly record struct BaseLine(Vec Foot, double Radius = 0, double Tilt = 0)
{
    /// <summary>Places a letter that begins so far along the line and is so wide: rigidly, upright on its middle.</summary>
    internal Func<Vec, Vec> Place(double from, double width)
    {
        var (foot, radius, tilt, middle) = (Foot, Radius, Tilt, from + (width / 2));
        if (radius == 0)
            return own => foot + new Vec(from + own.X, own.Y).Turned(tilt);
        var degrees = middle / radius * 180 / Math.PI;
        var center = foot - new Vec(0, radius);
        return own => center + new Vec(own.X - (width / 2), radius + own.Y).Turned(-degrees);
    }
}
