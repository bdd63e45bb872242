using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>A line of single stitches (fact row L28: 1.5 to 2.0 mm are best).</summary>
/// <param name="Path">Where it runs.</param>
internal sealed record RunningLine(Curve Path) : Part
{
    public double Stitch { get; init; } = 2;

    /// <summary>How often it is sewn, there and back.</summary>
    public int Passes { get; init; } = 1;

    public override IReadOnlyList<Dot> Dots() =>
    [
        .. Enumerable.Range(0, Passes).SelectMany(pass => (pass % 2 == 0 ? Path : Path.Backward())
            .Steps(Stitch)
            .Skip(pass == 0 ? 0 : 1)
            .Select(at => new Dot(at, SewnAs.Running))),
    ];
}
