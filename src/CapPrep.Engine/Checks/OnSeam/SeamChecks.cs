namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>What the center seam does to a design.</summary>
internal static class SeamChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        ColumnOnSeam.Check,
        FillParallel.Check,
        NothingAcross.Check,
        Joint.Check,
        TrimOnStep.Check,
    ];
}
