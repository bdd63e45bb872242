using Microsoft.CodeAnalysis.CSharp.Syntax;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

/// <summary>Who may call whom inside the service, and between the projects.</summary>
public sealed class SliceTests
{
    private const string Root = "CapPrep.Service";

    private static readonly string[] Common = ["Access", "Calls", "Events", "Jobs", "Plumbing", "Storage"];

    /// <summary>What a folder may call beside <see cref="Common"/> and itself; <c>*</c>: everything.</summary>
    private static readonly Dictionary<string, string[]> Further = new()
    {
        ["Bench"] = ["Results"],
        ["HotFolder"] = ["Intake"],
        ["Commands"] = ["*"],
    };

    /// <summary>Words of Access that a slice may say; the rest of it is its own business.</summary>
    private static readonly string[] WordsOfAccess = ["AccessSetup", "AdmittedScopes", "AuditTrail", "Caller", "ScopeExtensions", "Scopes"];

    [Fact]
    public void A_slice_calls_jobs_events_storage_and_plumbing_and_no_other_slice()
    {
        var wrong = Files().SelectMany(file => Called(file).Where(called => !MayCall(SliceOf(file), called)).Select(called => $"{file} calls {called}"));

        wrong.ShouldBeEmpty();
    }

    [Fact]
    public void Of_access_the_slices_say_scopes_caller_and_audit_only()
    {
        string[] own = [.. typeof(CapPrep.Service.Access.Scopes).Assembly.GetTypes().Where(type => type.Namespace == $"{Root}.Access" && !type.IsNested).Select(type => type.Name.Split('`')[0])];
        var wrong = Files()
            .Where(file => SliceOf(file) is not ("Access" or "Commands" or "Docs" or "Plumbing") && Called(file).Contains("Access"))
            .SelectMany(file => file.Syntax.DescendantNodes().OfType<IdentifierNameSyntax>()
                .Select(name => name.Identifier.Text)
                .Where(name => own.Contains(name) && !WordsOfAccess.Contains(name))
                .Distinct()
                .Select(name => $"{file} says {name}"));

        wrong.ShouldBeEmpty();
    }

    [Fact]
    public void Plumbing_does_not_become_a_drawer_for_everything() =>
        Files().Count(file => SliceOf(file) == "Plumbing").ShouldBeLessThan(10);

    [Theory]
    [InlineData("CapPrep.Engine", "")]
    [InlineData("CapPrep.Drawing", "CapPrep.Engine")]
    [InlineData("CapPrep.Service", "CapPrep.Drawing")]
    public void Projects_point_one_way(string project, string only)
    {
        var file = System.Xml.Linq.XDocument.Load(Path.Combine(TestKit.Repository.Root, "src", project, project + ".csproj"));

        var references = file.Descendants("ProjectReference").Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value));

        string.Join(' ', references).ShouldBe(only);
    }

    private static IEnumerable<SourceFile> Files() =>
        SourceFile.All.Where(file => file.Path.StartsWith($"src/{Root}/", StringComparison.Ordinal) && file.Path.Split('/').Length > 3);

    private static string SliceOf(SourceFile file) => file.Path.Split('/')[2];

    private static IEnumerable<string> Called(SourceFile file) => file.Syntax.DescendantNodes()
        .Select(node => node switch
        {
            UsingDirectiveSyntax directive => directive.NamespaceOrType.ToString(),
            QualifiedNameSyntax name => name.ToString(),
            MemberAccessExpressionSyntax access => access.ToString(),
            _ => "",
        })
        .Where(name => name.StartsWith(Root + ".", StringComparison.Ordinal))
        .Select(name => name.Split('.')[2])
        .Where(slice => slice != SliceOf(file))
        .Distinct();

    private static bool MayCall(string slice, string called) =>
        Common.Contains(called) || (Further.TryGetValue(slice, out var further) && (further.Contains(called) || further.Contains("*")));
}
