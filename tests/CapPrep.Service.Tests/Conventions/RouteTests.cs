using CapPrep.Service.Access;
using CapPrep.Service.Docs.Operations;
using CapPrep.TestKit.Documents;
using Microsoft.AspNetCore.Routing;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

public sealed class RouteTests
{
    private static readonly string[] Mapped = [.. Composition.Routes.SelectMany(Words).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_route_stands_in_the_document_and_nothing_else_does()
    {
        var documented = Composition.Contract.Operations.Select(operation => operation.ToString()).Order(StringComparer.Ordinal);

        documented.ShouldBe(Mapped);
    }

    [Fact]
    public void Every_row_of_the_table_of_operations_has_its_route()
    {
        var names = Composition.Routes.Select(route => route.Metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName);

        AllOperations.Listed.Select(operation => operation.Id).ShouldBe(names, ignoreOrder: true);
    }

    [Fact]
    public void Every_route_admits_the_scopes_that_were_decided_for_it()
    {
        var admitted = Composition.Routes.SelectMany(route => Words(route).Select(word => $"{word}: {Scopes(route)}"));

        admitted.Order(StringComparer.Ordinal).ShouldBe(DecidedScopes.Rows.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Only_what_lies_outside_v1_is_open()
    {
        foreach (var route in Composition.Routes)
            (Scopes(route).Length > 0).ShouldBe(Pattern(route).StartsWith("/v1/", StringComparison.Ordinal), Pattern(route));
    }

    private static string Pattern(RouteEndpoint route) => "/" + route.RoutePattern.RawText!.Trim('/');

    private static IEnumerable<string> Words(RouteEndpoint route) =>
        route.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods.Select(method => $"{method} {Pattern(route)}");

    private static string Scopes(RouteEndpoint route) =>
        string.Join(' ', (route.Metadata.GetMetadata<AdmittedScopes>()?.Any ?? []).Order(StringComparer.Ordinal));
}
