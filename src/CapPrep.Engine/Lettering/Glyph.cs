using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering;

/// <summary>One letter, digit or sign of a text line, with the dots and accents above it.</summary>
public sealed record Glyph
{
    /// <summary>Place in the line from the viewer's left, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Box on the cap, tape units: x from the center seam or the middle of the zone, y from the brim seam.</summary>
    public required Box Box { get; init; }

    /// <summary>Way along the base line from the foot of x = 0 to where it begins, mm, positive to the viewer's right.</summary>
    public required double FromMm { get; init; }

    /// <summary>The same to where it ends.</summary>
    public required double ToMm { get; init; }

    /// <summary>From the base line to its highest point, dots and accents left out, mm.</summary>
    public required double HeightMm { get; init; }

    /// <summary>Median width of its strokes, mm; 0 for a line of running stitches.</summary>
    public required double StrokeWidthMm { get; init; }

    /// <summary>Least inner width of its smallest opening, mm; null when it has none.</summary>
    public double? CounterMm { get; init; }

    /// <summary>Bare cloth to the next letter along the base line, mm, below 0 where they overlap; null for the last.</summary>
    public double? GapMm { get; init; }

    /// <summary>Penetrations of its strokes, first and last, counted from 0, in sewing order.</summary>
    public required IReadOnlyList<StitchRange> Strokes { get; init; }

    /// <summary>Indices of the elements it lies in, sorted.</summary>
    public required IReadOnlyList<int> Elements { get; init; }
}
