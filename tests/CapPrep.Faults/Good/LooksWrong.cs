using CapPrep.FaultCorpus.Plants;

namespace CapPrep.FaultCorpus.Good;

/// <summary>A design that looks wrong and is right, and its twin with one thing really wrong.</summary>
/// <param name="Rule">What must be reported of the twin.</param>
internal sealed record LooksWrong(int Number, string Title, string Rule, Func<Chance, Pair> Draw)
{
    internal static readonly IReadOnlyList<LooksWrong> All =
    [
        new(1, "banner, then text on it at the bottom", "order.tagline-first", OnOrder.Banner),
        new(2, "tack-down tree first", "order.bottom-up", OnOrder.Tree),
        new(3, "fill in two halves from the seam outward", "seam.joint", OnSeam.TwoHalves),
        new(4, "monogram stem on the seam over a fill", "seam.column-on-seam", OnSeam.StemOnFill),
        new(5, "even number of letters, gap on the seam", "seam.small-text", OnSeam.GapOnSeam),
        new(6, "upright rows on a one-piece front", "seam.fill-parallel", OnSeam.UprightRows),
        new(7, "foam letters, dense, wide, closed", "foam.no-stop", Made.Foam),
        new(8, "applique with two stops of one thread", "applique.no-stop", Made.Applique),
        new(9, "black borders last", "border.late", OnOrder.BlackBorders),
        new(10, "tone-on-tone border last", "border.late", OnOrder.ToneOnTone),
        new(11, "word with a sign at its right", "place.off-center", OnText.Registered),
        new(12, "slanted script, swash last", "stitch.column-narrow", OnText.Slanted),
        new(13, "blend of two open fills and a light", "stitch.cover", Made.Blend),
        new(14, "4 mm single-line text", "lettering.small", OnText.SingleLine),
        new(15, "4 mm text in fine thread", "lettering.small", OnText.FineThread),
        new(16, "left front panel from the seam outward", "order.center-out", OnOrder.LeftPanel),
        new(17, "back arch from left to right", "place.too-wide", OnText.BackArch),
        new(18, "letters left open in a fill", "seam.fill-parallel", Made.OpenLetters),
        new(19, "serif letters with tapering tips", "stitch.column-narrow", OnText.Serifs),
        new(20, "starts at the middle, no end record, machine ties", "stitch.no-tie", Made.MachineTies),
    ];
}
