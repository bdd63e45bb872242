using System.Runtime.CompilerServices;
using CapPrep.Drawing.Sheets;
using Shouldly;

namespace CapPrep.Drawing.Tests.Builders;

/// <summary>
/// Compares a sheet with the text kept beside the tests, byte for byte. <c>CAPPREP_ACCEPT=1</c> writes the text anew;
/// that is refused where <c>CI</c> is true.
/// </summary>
internal static class Golden
{
    public static void Compare(Sheet sheet, string name, [CallerFilePath] string caller = "")
    {
        var path = Path.Combine(Path.GetDirectoryName(caller)!, "Goldens", name + ".sheet");
        var text = SheetFile.Text(sheet);
        if (Accepting(Environment.GetEnvironmentVariable("CAPPREP_ACCEPT"), Environment.GetEnvironmentVariable("CI")))
            Write(path, text);
        File.Exists(path).ShouldBeTrue($"{path} is missing; look at the sheet, then run once with CAPPREP_ACCEPT=1.");
        FirstDifference(File.ReadAllText(path), text).ShouldBeNull();
        File.ReadAllBytes(path).ShouldBe(SheetFile.Write(sheet));
    }

    /// <exception cref="InvalidOperationException">Asked to accept in continuous integration.</exception>
    public static bool Accepting(string? accept, string? ci)
    {
        if (accept != "1")
            return false;
        return string.Equals(ci, "true", StringComparison.OrdinalIgnoreCase)
            ? throw new InvalidOperationException("CAPPREP_ACCEPT=1 is refused where CI is true: goldens are looked at by a person.")
            : true;
    }

    private static void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private static string? FirstDifference(string kept, string now)
    {
        var (before, after) = (kept.Split('\n'), now.Split('\n'));
        for (var i = 0; i < Math.Max(before.Length, after.Length); i++)
            if (before.ElementAtOrDefault(i) != after.ElementAtOrDefault(i))
                return $"line {i + 1}: kept '{before.ElementAtOrDefault(i)}', now '{after.ElementAtOrDefault(i)}'";
        return null;
    }
}
