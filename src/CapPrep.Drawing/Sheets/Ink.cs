using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace CapPrep.Drawing.Sheets;

/// <summary>An opaque color. Meaning never rests on it alone: shape or word says the same.</summary>
public readonly record struct Ink(byte Red, byte Green, byte Blue)
{
    public static readonly Ink Black = new(0x00, 0x00, 0x00);
    public static readonly Ink Soot = new(0x33, 0x33, 0x33);
    public static readonly Ink Stone = new(0x6B, 0x6B, 0x6B);
    public static readonly Ink Mist = new(0xC4, 0xC4, 0xC4);
    public static readonly Ink Chalk = new(0xF1, 0xEF, 0xEA);
    public static readonly Ink White = new(0xFF, 0xFF, 0xFF);

    /// <summary>The cloth where the order names no cap color.</summary>
    public static readonly Ink Cloth = new(0xE6, 0xE2, 0xDA);

    public static readonly Ink Brick = new(0xA8, 0x1C, 0x1C);
    public static readonly Ink Ocher = new(0x8A, 0x5A, 0x00);
    public static readonly Ink Slate = new(0x2B, 0x4C, 0x7E);

    /// <summary>How bright it looks, 0 to 255 (weights of ITU-R BT.601).</summary>
    public int Brightness => ((299 * Red) + (587 * Green) + (114 * Blue)) / 1000;

    /// <summary>A gray of that level.</summary>
    public static Ink Gray(byte level) => new(level, level, level);

    /// <summary>Black or white, whichever can be read on this ink.</summary>
    public Ink Over => Brightness > 140 ? Black : White;

    /// <summary>Reads <c>#RRGGBB</c>, either case.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out Ink ink)
    {
        ink = default;
        if (text is not { Length: 7 } || text[0] != '#'
            || !int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var rgb))
            return false;
        ink = new Ink((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb);
        return true;
    }

    /// <summary><c>#RRGGBB</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"#{Red:X2}{Green:X2}{Blue:X2}");
}
