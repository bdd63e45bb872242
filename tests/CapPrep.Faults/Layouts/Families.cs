using CapPrep.Faults.Designs;

namespace CapPrep.Faults.Layouts;

/// <summary>Clean designs by layout; the order of sewing is the layout's own.</summary>
internal static class Families
{
    internal static readonly IReadOnlyList<(string Name, Func<Chance, Design> Draw)> All =
    [
        ("crest over tagline", Crests.OverTagline),
        ("emblem over word", Crests.OverWord),
        ("roundel", Crests.Roundel),
        ("patch", Crests.Patch),
        ("monogram", Texts.Monogram),
        ("arc text", Texts.Arc),
        ("three lines", Texts.ThreeLines),
        ("wide line", Texts.WideLine),
        ("script", Texts.Script),
        ("single line", Texts.SingleLine),
        ("grid", Grids.ThreeByThree),
        ("blend", Grids.Blend),
        ("back arch", Grids.BackArch),
        ("side logo", Grids.Side),
        ("foam word", Special.FoamWord),
        ("applique", Special.Applique),
    ];
}
