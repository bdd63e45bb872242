using System.Globalization;
using System.Text;

namespace CapPrep.Drawing.Sheets;

/// <summary>
/// Makes text from outside harmless to draw: one line, no control or direction characters, no lone surrogates, at
/// most three marks on a letter. What is taken out where it could hide something leaves U+FFFD, which is seen.
/// </summary>
internal static class SafeText
{
    private const int MostMarksOnALetter = 3;

    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        var marks = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            marks = IsMark(rune) ? marks + 1 : 0;
            if (marks <= MostMarksOnALetter)
                Append(clean, rune);
        }

        return clean.ToString();
    }

    private static void Append(StringBuilder clean, Rune rune)
    {
        if (Rune.IsWhiteSpace(rune))
            clean.Append(' ');
        else if (IsJoiner(rune))
            return;
        else if (IsHarmful(rune))
            clean.Append('\uFFFD');
        else
            clean.Append(rune.ToString());
    }

    private static bool IsMark(Rune rune) => Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.SpacingCombiningMark;

    /// <summary>Soft hyphen, joiners and variation selectors: they say how to draw, not what.</summary>
    private static bool IsJoiner(Rune rune) =>
        rune.Value is 0xAD or 0x200C or 0x200D or (>= 0xFE00 and <= 0xFE0F);

    private static bool IsHarmful(Rune rune) =>
        rune.Value is 0xFFFE or 0xFFFF
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate;
}
