namespace CapPrep.Engine.Checks.OnTape;

/// <summary>The file itself.</summary>
internal static class TapeChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        CutOff.Check,
        .. Quirks.Checks,
    ];
}
