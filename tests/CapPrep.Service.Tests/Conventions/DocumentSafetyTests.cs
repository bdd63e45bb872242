using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

/// <summary>
/// What the OWASP API Security rule set for OpenAPI documents asks for (Stoplight, spectral-owasp-ruleset, commit
/// 0296a886, and its later rules for the edition of 2023 from memory), each rule written anew as a test. Left out:
/// rules about OAuth tokens and JWT, which are not used; https server addresses, since the one server is the relative
/// "/"; and CORS, since no browser calls this API.
/// </summary>
public sealed partial class DocumentSafetyTests
{
    private static readonly ApiContract Contract = Composition.Contract;
    private static readonly JsonObject Document = Contract.Document;
    private static readonly JsonObject[] Secured = [.. Contract.Operations.Where(operation => operation.IsSecured).Select(operation => operation.Body)];

    [Fact]
    public void No_id_is_a_number() =>
        Parameters().Where(parameter => IdName().IsMatch(Text(parameter, "name")) && Text(Schema(parameter), "type") == "integer").ShouldBeEmpty();

    [Fact]
    public void Keys_are_sent_in_a_header_by_a_scheme_that_is_safe()
    {
        var schemes = Document["components"]!["securitySchemes"]!.AsObject().Select(scheme => scheme.Value!.AsObject()).ToArray();

        schemes.ShouldNotBeEmpty();
        foreach (var scheme in schemes)
        {
            Text(scheme, "type").ShouldBe("http");
            Text(scheme, "scheme").ShouldBe("bearer");
        }
    }

    [Fact]
    public void No_credential_stands_in_an_address() => Parameters()
        .Where(parameter => Text(parameter, "in") is "path" or "query")
        .Select(parameter => Text(parameter, "name"))
        .Where(name => Credential().IsMatch(name))
        .ShouldBeEmpty();

    [Fact]
    public void No_address_of_something_else_is_asked_for_in_a_query() => Parameters()
        .Where(parameter => Text(parameter, "in") is "path" or "query")
        .Select(parameter => Text(parameter, "name"))
        .Where(name => AddressName().IsMatch(name))
        .ShouldBeEmpty();

    [Fact]
    public void Every_operation_that_changes_something_is_behind_a_key() =>
        Contract.Operations.Where(operation => operation.Method != "get" && !operation.IsSecured).ShouldBeEmpty();

    [Fact]
    public void Every_reading_operation_under_v1_is_behind_a_key() =>
        Contract.Operations.Where(operation => operation.Path.StartsWith("/v1/", StringComparison.Ordinal) && !operation.IsSecured).ShouldBeEmpty();

    [Fact]
    public void Every_operation_says_whether_it_needs_a_key() =>
        Contract.Operations.Where(operation => operation.Body["security"] is not JsonArray).ShouldBeEmpty();

    [Theory]
    [InlineData("400")]
    [InlineData("401")]
    [InlineData("403")]
    [InlineData("429")]
    [InlineData("500")]
    public void Every_operation_behind_a_key_documents_its_refusals(string status)
    {
        foreach (var operation in Secured)
            operation["responses"]?[status]?["content"]?["application/problem+json"]?["schema"].ShouldNotBeNull($"{Text(operation, "operationId")} {status}");
    }

    [Fact]
    public void Every_open_operation_documents_our_faults()
    {
        foreach (var operation in Contract.Operations)
            operation.Responses["500"]?["content"].ShouldNotBeNull(operation.Id);
    }

    [Fact]
    public void Every_operation_that_takes_a_body_says_what_becomes_of_a_wrong_one() => Secured
        .Where(operation => operation["requestBody"] is not null && operation["responses"]!["422"] is null)
        .ShouldBeEmpty();

    [Fact]
    public void Every_refusal_is_a_problem_document() => Contract.Operations
        .SelectMany(operation => operation.Responses.Where(answer => answer.Key[0] is '4' or '5').Select(answer => (operation.Id, answer)))
        .Where(pair => pair.answer.Value!["content"]?["application/problem+json"] is null && pair.Id != "getReady")
        .ShouldBeEmpty();

    [Fact]
    public void Answers_say_what_is_left_of_the_rate()
    {
        foreach (var operation in Secured)
        {
            foreach (var (status, answer) in operation["responses"]!.AsObject().Where(answer => answer.Key[0] is '2' || answer.Key is "404" or "422" or "429"))
                answer!["headers"]?["RateLimit"].ShouldNotBeNull($"{Text(operation, "operationId")} {status}");
        }
    }

    [Fact]
    public void Who_is_limited_learns_how_long_to_wait()
    {
        foreach (var operation in Secured)
            operation["responses"]!["429"]!["headers"]!["Retry-After"].ShouldNotBeNull();
    }

    [Fact]
    public void Who_has_no_key_learns_what_is_asked_for()
    {
        foreach (var operation in Secured)
            operation["responses"]!["401"]!["headers"]!["WWW-Authenticate"].ShouldNotBeNull();
    }

    [Fact]
    public void Every_list_has_an_end() =>
        Schemas("array").Where(schema => schema["maxItems"] is null || schema["items"] is null).ShouldBeEmpty();

    [Fact]
    public void Every_text_has_a_longest_form() =>
        Schemas("string").Where(schema => schema["maxLength"] is null && schema["enum"] is null && schema["const"] is null).ShouldBeEmpty();

    [Fact]
    public void Every_text_is_restricted() =>
        Schemas("string").Where(schema => schema["format"] is null && schema["pattern"] is null && schema["enum"] is null && schema["const"] is null).ShouldBeEmpty();

    [Fact]
    public void Every_whole_number_has_bounds() =>
        Schemas("integer").Where(schema => schema["minimum"] is null || schema["maximum"] is null).ShouldBeEmpty();

    [Fact]
    public void Every_whole_number_has_a_format_that_holds_it()
    {
        foreach (var schema in Schemas("integer"))
        {
            var format = Text(schema, "format");
            format.ShouldBeOneOf("int32", "int64");
            if (format == "int32")
                schema["maximum"]!.GetValue<double>().ShouldBeLessThanOrEqualTo(int.MaxValue);
        }
    }

    [Fact]
    public void Every_number_has_bounds() =>
        Schemas("number").Where(schema => schema["minimum"] is null || schema["maximum"] is null).ShouldBeEmpty();

    [Fact]
    public void Every_pattern_holds_the_whole_text()
    {
        foreach (var pattern in Schemas("string").Select(schema => Text(schema, "pattern")).Where(pattern => pattern.Length > 0))
            pattern.ShouldStartWith("^");
    }

    /// <summary>Answers stay open on purpose: they may gain members. What is sent may not hold what nobody reads.</summary>
    [Fact]
    public void What_callers_send_is_closed()
    {
        var sent = Secured.Select(operation => operation["requestBody"]?["content"]).OfType<JsonObject>()
            .SelectMany(content => content.Select(media => media.Value!["schema"]!)).SelectMany(Reached).Distinct();

        sent.OfType<JsonObject>().Where(schema => Text(schema, "type") == "object" && schema["additionalProperties"] is null).ShouldBeEmpty();
    }

    [Fact]
    public void Maps_are_bounded_and_say_what_they_hold() => Schemas("object")
        .Where(schema => schema["additionalProperties"] is JsonObject && schema["maxProperties"] is null)
        .ShouldBeEmpty();

    [Fact]
    public void No_address_of_a_server_is_without_encryption() => Document["servers"]!.AsArray()
        .Select(server => Text(server!.AsObject(), "url"))
        .ShouldBe(["/"]);

    [Fact]
    public void Every_operation_has_a_summary_a_description_and_a_known_tag()
    {
        var tags = Document["tags"]!.AsArray().Select(tag => Text(tag!.AsObject(), "name")).ToArray();
        foreach (var operation in Contract.Operations)
        {
            Text(operation.Body, "summary").ShouldNotBeEmpty();
            Text(operation.Body, "summary").ShouldNotEndWith(".");
            Text(operation.Body, "description").ShouldNotBeEmpty();
            operation.Body["tags"]!.AsArray().Select(tag => tag!.GetValue<string>()).ShouldAllBe(tag => tags.Contains(tag));
        }
    }

    [Fact]
    public void Every_part_of_a_path_has_its_parameter()
    {
        foreach (var operation in Contract.Operations)
        {
            var inPath = Regex.Matches(operation.Path, @"\{(\w+)\}").Select(match => match.Groups[1].Value);
            (operation.Body["parameters"]?.AsArray() ?? []).Select(parameter => Contract.Resolved(parameter!).AsObject())
                .Where(parameter => Text(parameter, "in") == "path")
                .Select(parameter => Text(parameter, "name"))
                .ShouldBe(inPath, operation.Id);
        }
    }

    [Fact]
    public void The_rules_find_what_they_look_for()
    {
        IdName().IsMatch("job_id").ShouldBeTrue();
        Credential().IsMatch("accessToken").ShouldBeTrue();
        AddressName().IsMatch("callback_url").ShouldBeTrue();
        Schemas("string").Count().ShouldBeGreaterThan(100);
        Secured.Length.ShouldBeGreaterThan(20);
    }

    private static IEnumerable<JsonObject> Parameters() =>
        Document["components"]!["parameters"]!.AsObject().Select(parameter => parameter.Value!.AsObject());

    private static JsonObject Schema(JsonObject parameter) => Contract.Resolved(parameter["schema"]!).AsObject();

    /// <summary>Every schema of a type outside the examples.</summary>
    private static IEnumerable<JsonObject> Schemas(string type) =>
        new[] { "schemas", "parameters", "headers" }
            .SelectMany(section => ApiContract.Nodes(Document["components"]![section]!))
            .OfType<JsonObject>()
            .Where(schema => Text(schema, "type") == type);

    /// <summary>A schema and all it refers to.</summary>
    private static IEnumerable<JsonNode> Reached(JsonNode schema)
    {
        var seen = new HashSet<JsonNode>();
        var open = new Queue<JsonNode>([schema]);
        while (open.TryDequeue(out var next))
        {
            foreach (var node in ApiContract.Nodes(Contract.Resolved(next)).Where(seen.Add).ToArray())
            {
                if (node is JsonObject { Count: > 0 } value && value.ContainsKey("$ref"))
                    open.Enqueue(value);
            }
        }

        return seen;
    }

    private static string Text(JsonObject owner, string name) =>
        owner[name] is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : "";

    [GeneratedRegex("(^id|_id|Id|-id)$")]
    private static partial Regex IdName();

    [GeneratedRegex("client_?secret|token|password|secret|api-?key", RegexOptions.IgnoreCase)]
    private static partial Regex Credential();

    [GeneratedRegex("(^|_|-)(callback|redirect|return|next|target|url|uri)(_|-|$)", RegexOptions.IgnoreCase)]
    private static partial Regex AddressName();
}
