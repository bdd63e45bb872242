using CapPrep.Engine.Checks.OnLetters.OnLines;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>What the lines of letters are like, and how they lie on the cap.</summary>
internal static class LetterChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        Turned.Check,
        EyeCenter.Check,
        NotLevel.Check,
        Bow.Check,
        SeamLetters.Check,
        LetterTrims.Check,
        SmallLetters.Check,
        Openings.Counter,
        Openings.Gap,
    ];
}
