using System.Text.Json.Nodes;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Docs;

public sealed class ExampleTests
{
    private static readonly ApiContract Contract = Composition.Contract;

    [Fact]
    public void Every_request_and_every_answer_with_a_schema_has_an_example()
    {
        var without = Places().Where(place => place.Media["schema"] is not null && place.Media["examples"] is not JsonObject { Count: > 0 });

        without.Select(place => place.Where).ShouldBeEmpty();
    }

    [Fact]
    public void Every_example_is_valid_where_it_stands()
    {
        var faults = Places().SelectMany(place => Examples(place.Media).SelectMany(example =>
            Contract.Faults(place.Media["schema"]!, example.Value).Select(fault => $"{place.Where}: {example.Name}: {fault}")));

        faults.ShouldBeEmpty();
    }

    [Fact]
    public void A_body_with_a_member_that_no_schema_lists_is_found()
    {
        var schema = Contract.Operation("getLive").Responses["200"]!["content"]!["application/json"]!["schema"]!;

        Contract.Faults(schema, JsonNode.Parse("""{"status":"live"}""")).ShouldBeEmpty();
        Contract.Faults(schema, JsonNode.Parse("""{"status":"live","since":1}""")).ShouldNotBeEmpty();
        Contract.Faults(schema, JsonNode.Parse("""{"status":"dead"}""")).ShouldNotBeEmpty();
    }

    internal static IEnumerable<(string Where, JsonObject Media)> Places()
    {
        foreach (var operation in Contract.Operations.Concat(Webhooks()))
        {
            foreach (var (type, media) in Contents(operation.Body["requestBody"]))
                yield return ($"{operation}: {type}", media);
            foreach (var (status, answer) in operation.Responses)
            {
                foreach (var (type, media) in Contents(answer))
                    yield return ($"{operation}: {status} {type}", media);
            }
        }
    }

    private static IEnumerable<ApiOperation> Webhooks() => Contract.Document["webhooks"]!.AsObject()
        .Select(webhook => new ApiOperation("post", webhook.Key, webhook.Value!["post"]!.AsObject()));

    private static IEnumerable<(string Type, JsonObject Media)> Contents(JsonNode? owner) =>
        owner?["content"]?.AsObject().Select(content => (content.Key, content.Value!.AsObject())) ?? [];

    private static IEnumerable<(string Name, JsonNode? Value)> Examples(JsonObject media) =>
        media["examples"]?.AsObject().Select(example => (example.Key, Contract.Resolved(example.Value!)["value"])) ?? [];
}
