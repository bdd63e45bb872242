using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using CapPrep.TestKit;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

/// <summary>The shape of the code, wherever it stands.</summary>
public sealed partial class SourceTests
{
    private const int LongestFile = 400;
    private const int LongestBody = 60;

    private static readonly Assembly[] Ours = [typeof(Engine.Verdict).Assembly, Assembly.Load("CapPrep.Drawing"), typeof(CapPrep.Service.Access.Scopes).Assembly];

    [Fact]
    public void No_file_is_too_long_to_read()
    {
        SourceFile.AllAndTests
            .Select(file => (file.Path, Lines: file.Text.Count(letter => letter == '\n')))
            .Where(file => file.Lines > LongestFile)
            .ShouldBeEmpty();
    }

    [Fact]
    public void No_method_is_too_long_to_read()
    {
        var tooLong = SourceFile.AllAndTests.SelectMany(file => file.Syntax.DescendantNodes()
            .Select(BodyOf)
            .OfType<SyntaxNode>()
            .Where(body => body is BlockSyntax || file.Path.StartsWith("src/", StringComparison.Ordinal))
            .Select(body => (Line: body.GetLocation().GetLineSpan().StartLinePosition.Line + 1, Lines: LinesInside(body)))
            .Where(body => body.Lines > LongestBody)
            .Select(body => $"{file}({body.Line}): {body.Lines} lines"));

        tooLong.ShouldBeEmpty();
    }

    [Fact]
    public void Every_class_is_sealed_static_or_abstract()
    {
        var open = Ours.SelectMany(assembly => assembly.GetTypes())
            .Where(type => type is { IsClass: true, IsSealed: false, IsAbstract: false }
                && !type.IsDefined(typeof(CompilerGeneratedAttribute))
                && type.Namespace?.StartsWith("CapPrep.", StringComparison.Ordinal) == true
                && !type.Namespace.Contains("Migrations", StringComparison.Ordinal));

        open.ShouldBeEmpty();
    }

    [Fact]
    public void The_service_shows_no_type_to_others()
    {
        var shown = typeof(CapPrep.Service.Access.Scopes).Assembly.GetExportedTypes()
            .Where(type => !IsProgram(type) && type.Namespace?.Contains("Migrations", StringComparison.Ordinal) != true);

        shown.ShouldBeEmpty();
    }

    [Fact]
    public void Names_are_spelled_the_American_way()
    {
        var british = SourceFile.AllAndTests.SelectMany(file => file.Syntax.DescendantTokens()
            .Where(token => token.IsKind(SyntaxKind.IdentifierToken) && British().IsMatch(token.ValueText))
            .Select(token => $"{file}: {token.ValueText}")
            .Distinct());

        british.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("Colour")]
    [InlineData("threadColours")]
    [InlineData("_centreSeam")]
    [InlineData("WidthMillimetres")]
    [InlineData("IsCancelled")]
    public void A_British_name_is_found(string name) => British().IsMatch(name).ShouldBeTrue();

    [Theory]
    [InlineData("Color")]
    [InlineData("CenterSeam")]
    [InlineData("IsCancellationRequested")]
    [InlineData("Parameters")]
    [InlineData("diameter")]
    public void An_American_name_is_let_pass(string name) => British().IsMatch(name).ShouldBeFalse();

    [Fact]
    public void Nothing_is_caught_and_dropped_without_a_type()
    {
        var dropped = SourceFile.All.SelectMany(file => file.Syntax.DescendantNodes().OfType<CatchClauseSyntax>()
            .Where(clause => clause.Declaration is null || (clause is { Filter: null, Block.Statements.Count: 0 } && clause.Declaration.Type.ToString() == "Exception"))
            .Where(clause => !clause.Block.Statements.OfType<ThrowStatementSyntax>().Any())
            .Select(clause => $"{file}({clause.GetLocation().GetLineSpan().StartLinePosition.Line + 1})"));

        dropped.ShouldBeEmpty();
    }

    [Fact]
    public void The_program_only_picks_its_command()
    {
        File.ReadLines(Path.Combine(Repository.Root, "src", "CapPrep.Service", "Program.cs")).Count().ShouldBeLessThanOrEqualTo(5);
    }

    // In tests an expression body is a table of cases, which may be long.
    private static SyntaxNode? BodyOf(SyntaxNode node) => node switch
    {
        BaseMethodDeclarationSyntax method => (SyntaxNode?)method.Body ?? method.ExpressionBody,
        LocalFunctionStatementSyntax function => (SyntaxNode?)function.Body ?? function.ExpressionBody,
        AccessorDeclarationSyntax accessor => (SyntaxNode?)accessor.Body ?? accessor.ExpressionBody,
        _ => null,
    };

    private static int LinesInside(SyntaxNode body)
    {
        var span = body.GetLocation().GetLineSpan();
        return span.EndLinePosition.Line - span.StartLinePosition.Line - 1;
    }

    private static bool IsProgram(Type type) => type is { Name: "Program", Namespace: null };

    [GeneratedRegex("([Cc]olour|[Cc]entre|[Gg]rey([A-Z_]|$)|[Mm]etre|[Bb]ehaviour|[Cc]ancelled|[Cc]ancelling|[Nn]eighbour|[Cc]atalogue|[Ff]avourite|[Hh]onour|[Ii]nitialis|[Nn]ormalis|[Oo]ptimis|[Oo]rganis|[Rr]ecognis|[Ss]erialis|[Ss]ynchronis|[Aa]nalyse|[Ll]abelled|[Dd]ialogue)")]
    private static partial Regex British();
}
