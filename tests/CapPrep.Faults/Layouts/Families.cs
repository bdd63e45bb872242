using CapPrep.FaultCorpus.Designs;

namespace CapPrep.FaultCorpus.Layouts;

/// <summary>Clean designs by layout; the order of sewing is the layout's own. The last word says whether it looks wrong.</summary>
internal static class Families
{
    internal static readonly IReadOnlyList<(string Name, Func<Chance, Design> Draw, bool IsHard)> All =
    [
        ("crest over tagline", Crests.OverTagline, false),
        ("emblem over word", Crests.OverWord, false),
        ("roundel", Crests.Roundel, true),
        ("patch", Crests.Patch, true),
        ("monogram", Texts.Monogram, false),
        ("arc text", Texts.Arc, false),
        ("three lines", Texts.ThreeLines, false),
        ("wide line", Texts.WideLine, false),
        ("script", Texts.Script, true),
        ("single line", Texts.SingleLine, false),
        ("grid", Grids.ThreeByThree, false),
        ("blend", Grids.Blend, true),
        ("back arch", Grids.BackArch, false),
        ("side logo", Grids.Side, false),
        ("foam word", Special.FoamWord, true),
        ("applique", Special.Applique, true),
        ("ribbon", Hard.Ribbon, true),
        ("mosaic", Hard.Mosaic, false),
        ("rings", Hard.Rings, true),
        ("at the limits", Hard.AtTheLimits, true),
    ];
}
