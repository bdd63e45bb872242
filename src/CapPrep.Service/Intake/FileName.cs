using System.Text;
using Microsoft.Net.Http.Headers;

namespace CapPrep.Service.Intake;

/// <summary>The name a file came under: a text that is shown, never a path that is opened.</summary>
internal static class FileName
{
    /// <summary>Longest name kept, in characters.</summary>
    public const int Longest = 255;

    /// <summary>The name a part gives, the extended form first (RFC 6266, 4.3); null: none.</summary>
    public static string? Of(ContentDispositionHeaderValue disposition)
    {
        var name = disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName;
        return Cleaned(HeaderUtilities.RemoveQuotes(name).Value);
    }

    /// <summary>Without folders in front, without control characters, cut to its longest; null when nothing is left.</summary>
    public static string? Cleaned(string? name)
    {
        if (name is null)
            return null;
        var last = name[(name.LastIndexOfAny(['/', '\\']) + 1)..];
        var runes = last.EnumerateRunes().Where(rune => !Rune.IsControl(rune)).Take(Longest);
        var text = new StringBuilder(last.Length);
        foreach (var rune in runes)
            text.Append(rune.ToString());
        var cleaned = text.ToString().Trim();
        return cleaned.Length == 0 ? null : cleaned;
    }
}
