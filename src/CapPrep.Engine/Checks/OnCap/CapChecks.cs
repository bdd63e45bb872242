using CapPrep.Engine.Checks.OnCap.Front;

namespace CapPrep.Engine.Checks.OnCap;

/// <summary>Where the design lies on the cap, in the frame and in the machine.</summary>
internal static class CapChecks
{
    internal static readonly IReadOnlyList<Check> All =
    [
        OutsideField.Check,
        TravelOutside.Check,
        DesignSize.TooTall,
        DesignSize.TooWide,
        Crown.Check,
        AboveBrim.Check,
        KeepOut.SideSeam,
        KeepOut.Eyelet,
        Posts.Check,
        OffCenter.Check,
        TurnsAway.Check,
    ];
}
