using System.Text.Json.Nodes;

namespace CapPrep.Service.Docs;

/// <summary>
/// The examples of the document: the files of openapi/examples, and what follows from them, such as a page with one
/// item.
/// </summary>
internal static class Examples
{
    private const string Folder = "examples/";

    /// <summary>Every example by name.</summary>
    public static IReadOnlyDictionary<string, JsonNode> All()
    {
        var examples = Files();
        foreach (var (name, value) in Derived(examples))
            examples.Add(name, value);
        return examples;
    }

    private static SortedDictionary<string, JsonNode> Files()
    {
        var assembly = typeof(Examples).Assembly;
        var files = new SortedDictionary<string, JsonNode>(StringComparer.Ordinal);
        foreach (var resource in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(resource)!;
            files.Add(resource[Folder.Length..^".json".Length], JsonNode.Parse(stream)!);
        }

        return files;
    }

    private static IEnumerable<(string, JsonNode)> Derived(SortedDictionary<string, JsonNode> files) =>
        DerivedExamples.OfTheCatalog(files).Concat(DerivedExamples.OfJobs(files)).Concat(DerivedExamples.OfAccess(files)).ToArray();
}
