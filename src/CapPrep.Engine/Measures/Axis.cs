namespace CapPrep.Engine.Measures;

/// <summary>
/// The mean direction of lines without regard to their sense, as a sum of doubled-angle vectors weighted by length.
/// </summary>
/// <param name="X">Sum of length times cosine of the doubled angle, tape units.</param>
/// <param name="Y">Sum of length times sine of the doubled angle, tape units.</param>
/// <param name="Length">Sum of lengths, tape units.</param>
public readonly record struct Axis(long X, long Y, long Length)
{
    /// <summary>No line at all.</summary>
    public static readonly Axis None = new(0, 0, 0);
}
