using System.Text;

namespace CapPrep.Engine.Tickets;

/// <summary>The name of a design as far as a file name tells it.</summary>
internal static class DesignName
{
    private const int Longest = 120;

    /// <summary>
    /// The name without folders and extension, fit to be printed (no control characters, at most 120 characters);
    /// null when nothing is left.
    /// </summary>
    internal static string? Of(string? fileName)
    {
        if (fileName is null)
            return null;
        var name = fileName[(fileName.LastIndexOfAny(['/', '\\']) + 1)..];
        var dot = name.LastIndexOf('.');
        var bare = dot < 0 ? name : name[..dot];
        var printed = string.Concat(bare.EnumerateRunes().Where(rune => !Rune.IsControl(rune)).Take(Longest)).Trim();
        return printed.Length == 0 ? null : printed;
    }
}
