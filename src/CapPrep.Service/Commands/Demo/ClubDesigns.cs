using CapPrep.Engine.Drafting;

namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// Five designs for the caps of an invented rowing club, the Quayside Herons: one that is right, and four that are
/// wrong in the ways that cost a shop most.
/// </summary>
internal static class ClubDesigns
{
    private const string Club = "HERONS";
    private const string Founded = "EST 1987";
    private const int FeetAbove = 184;

    private static readonly TextLine BottomLine = new(Club, Height: 92, Stroke: 17, Gap: 26);
    private static readonly ClubEmblem Emblem = new(FeetAbove, 100);

    /// <summary>Bottom line first, from the seam outward; then upward: waves, oars, heron, and the blades at the sides.</summary>
    public static byte[] Right() => Whole(Emblem, "HERONS");

    /// <summary>The same stitches as a flat design is often made: bottom line last, and from left to right.</summary>
    public static byte[] BottomLineLast()
    {
        var draft = new Draft();
        Emblem.Shafts(draft);
        draft.ColorStop();
        Emblem.Heron(draft);
        Emblem.Blades(draft);
        draft.ColorStop();
        Emblem.Waves(draft);
        BottomLine.Sew(draft, BottomLine.FromLeft());
        return draft.ToBytes("HERONS FLAT");
    }

    /// <summary>An emblem far up the crown: 71 mm from top to bottom.</summary>
    public static byte[] TooTall() => Whole(new ClubEmblem(FeetAbove + 40, 145), "HERONS TALL");

    /// <summary>Small text over the seam, a running outline round a fill, and one spot sewn over and over.</summary>
    public static byte[] Crowded()
    {
        var draft = new Draft();
        var small = new TextLine(Founded, Height: 36, Stroke: 8, Gap: 10);
        small.Sew(draft, small.FromCenter());
        draft.ColorStop();
        SunOverWater.Disk(draft);
        draft.ColorStop();
        SunOverWater.Outline(draft);
        draft.ColorStop();
        SunOverWater.Spot(draft);
        return draft.ToBytes("HERONS EST");
    }

    /// <summary>The beginning of a download that broke off.</summary>
    public static byte[] Broken() => Right()[..300];

    private static byte[] Whole(ClubEmblem emblem, string label)
    {
        var draft = new Draft();
        BottomLine.Sew(draft, BottomLine.FromCenter());
        emblem.Waves(draft);
        draft.ColorStop();
        emblem.Shafts(draft);
        draft.ColorStop();
        emblem.Heron(draft);
        emblem.Blades(draft);
        return draft.ToBytes(label);
    }
}
