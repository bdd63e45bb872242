using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering;

/// <summary>What letters stand on: a straight line or a part of a circle, as it lies on the cap.</summary>
public sealed record BaseLine
{
    /// <summary>Where it begins at the viewer's left, cap-front mm.</summary>
    public required PointMm Start { get; init; }

    /// <summary>Where it ends at the viewer's right, cap-front mm.</summary>
    public required PointMm End { get; init; }

    /// <summary>Middle of the circle, cap-front mm; null for a straight line.</summary>
    public PointMm? CenterMm { get; init; }

    /// <summary>Radius of the circle, mm, 12 to 400; null for a straight line.</summary>
    public double? RadiusMm { get; init; }

    /// <summary>
    /// How far its middle lies above the straight way from start to end, mm: above 0 for an arc that rises in its middle,
    /// below 0 for one that hangs, 0 for a straight line.
    /// </summary>
    public required double RiseMm { get; init; }

    /// <summary>Angle of the straight way from start to end against the brim line, counter-clockwise, -90 to 90.</summary>
    public required double TiltDegrees { get; init; }

    /// <summary>Length along it, mm.</summary>
    public required double LengthMm { get; init; }

    public bool IsArc => RadiusMm is not null;
}
