using CapPrep.TestKit;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace CapPrep.Service.Tests.Conventions;

/// <summary>One file of the source code, read and parsed.</summary>
/// <param name="Path">From the repository's root, with slashes.</param>
internal sealed record SourceFile(string Path, string Text)
{
    private readonly Lazy<CompilationUnitSyntax> _syntax = new(() => CSharpSyntaxTree.ParseText(Text).GetCompilationUnitRoot());

    /// <summary>Everything under src that a person wrote.</summary>
    public static IReadOnlyList<SourceFile> All { get; } = Under("src", "/Storage/Migrations/");

    /// <summary>Source code and tests.</summary>
    public static IReadOnlyList<SourceFile> AllAndTests { get; } = [.. All, .. Under("tests", "/bin/")];

    public CompilationUnitSyntax Syntax => _syntax.Value;

    public override string ToString() => Path;

    private static SourceFile[] Under(string folder, string leftOut) =>
    [
        .. Directory.EnumerateFiles(System.IO.Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories)
            .Select(file => (Path: System.IO.Path.GetRelativePath(Repository.Root, file).Replace('\\', '/'), File: file))
            .Where(file => !file.Path.Contains(leftOut, StringComparison.Ordinal) && !file.Path.Contains("/obj/", StringComparison.Ordinal))
            .OrderBy(file => file.Path, StringComparer.Ordinal)
            .Select(file => new SourceFile(file.Path, File.ReadAllText(file.File))),
    ];
}
