using System.Text.RegularExpressions;
using CapPrep.TestKit;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Conventions;

public sealed partial class SourceConventionTests
{
    private const int LongestFile = 400;

    private static readonly string[] British =
    [
        "colour", "centre", "grey", "behaviour", "favour", "millimetre", "organis", "initialis", "normalis", "recognis",
        "labelled", "cancelled", "catalogue", "licence",
    ];

    [Fact]
    public void No_file_is_longer_than_400_lines() =>
        Sources()
            .Where(file => File.ReadLines(file).Count() > LongestFile)
            .ShouldBeEmpty();

    [Fact]
    public void Identifiers_are_spelled_the_American_way() =>
        Sources()
            .SelectMany(file => British
                .Where(word => NoCode().Replace(File.ReadAllText(file), "").Contains(word, StringComparison.OrdinalIgnoreCase))
                .Select(word => $"{word}: {file}"))
            .ShouldBeEmpty();

    [Fact]
    public void There_are_sources_to_look_at() => Sources().Count().ShouldBeGreaterThan(100);

    private static IEnumerable<string> Sources() => new[] { "src", "tests" }
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories))
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}Migrations{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    /// <summary>Comments and texts, which may quote others.</summary>
    [GeneratedRegex("""//[^\n]*|"(?:\\.|[^"\\\n])*" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex NoCode();
}
