using System.Text.Json.Nodes;
using CapPrep.Service.Tests.Conventions;
using CapPrep.TestKit;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Docs;

public sealed class NothingLeftOverTests
{
    [Fact]
    public void Every_file_of_examples_is_named_in_the_documentation()
    {
        var texts = string.Concat(SourceFile.All.Where(file => file.Path.Contains("/Docs/", StringComparison.Ordinal)).Select(file => file.Text));

        Directory.EnumerateFiles(Path.Combine(Repository.Root, "openapi", "examples"))
            .Select(Path.GetFileNameWithoutExtension)
            .Where(name => !name!.StartsWith("problem-", StringComparison.Ordinal) && !texts.Contains($"\"{name}\"", StringComparison.Ordinal))
            .ShouldBeEmpty();
    }

    [Fact]
    public void Every_schema_is_referred_to()
    {
        var reached = ApiContract.Nodes(Composition.Contract.Document).OfType<JsonObject>()
            .Select(node => node["$ref"])
            .OfType<JsonValue>()
            .Select(value => value.GetValue<string>())
            .ToHashSet();

        Composition.Contract.Document["components"]!["schemas"]!.AsObject()
            .Where(schema => !reached.Contains("#/components/schemas/" + schema.Key))
            .Select(schema => schema.Key)
            .ShouldBeEmpty();
    }
}
