using System.Globalization;
using System.Text;
using CapPrep.Service.Storage;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Names from outside are texts, never paths that we make: our own folders get a name reduced to letters, digits,
/// dot, underscore and hyphen.
/// </summary>
internal static class SafeName
{
    /// <summary>Longest reduced name, in characters.</summary>
    public const int Longest = 40;

    private const int DropDigits = 12;

    /// <summary>Never empty, never beginning with a dot.</summary>
    public static string Of(string name)
    {
        var text = new StringBuilder(Longest);
        foreach (var rune in name.EnumerateRunes().Take(Longest))
            text.Append(rune.IsAscii && (char.IsAsciiLetterOrDigit((char)rune.Value) || rune.Value is '.' or '_' or '-') ? (char)rune.Value : '_');
        if (text.Length == 0 || text[0] == '.')
            text.Insert(0, '_');
        return text.ToString(0, Math.Min(text.Length, Longest));
    }

    /// <summary>Name of the folder of an answer, unless one lies there already.</summary>
    public static string Answer(string name, long number) =>
        string.Create(CultureInfo.InvariantCulture, $"{Of(name)}.{number}");

    /// <summary>As <see cref="Answer"/>, for an answer that has an earlier one beside it.</summary>
    public static string FurtherAnswer(string name, long number, string dropId) => $"{Answer(name, number)}.{Short(dropId)}";

    /// <summary>Name of the folder of a returned drop.</summary>
    public static string Returned(string name, string dropId) => $"{Of(name)}.{Short(dropId)}";

    /// <summary>The same for the case that it is taken.</summary>
    public static string ReturnedInFull(string name, string dropId) => $"{Of(name)}.{dropId[Ids.Drop.Length..]}";

    /// <summary>A name as people may read it: letters that control the writing, or that are none, are underscores.</summary>
    public static string Shown(string name)
    {
        var text = new StringBuilder(name.Length);
        foreach (var rune in name.EnumerateRunes())
        {
            var readable = Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);
            text.Append(readable ? rune.ToString() : "_");
        }

        return text.ToString();
    }

    private static string Short(string dropId) => dropId.Substring(Ids.Drop.Length, DropDigits);
}
