using CapPrep.Service.Access;
using Microsoft.AspNetCore.Mvc.ApiExplorer;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace CapPrep.Service.Docs;

/// <summary>
/// Gives the generated document its content: bodies are written and read by hand here, so nothing can be inferred from
/// types, and the framework only says which routes there are.
/// </summary>
internal sealed class ApiTransformer : IOpenApiDocumentTransformer
{
    public Task TransformAsync(OpenApiDocument document, OpenApiDocumentTransformerContext context, CancellationToken cancellationToken)
    {
        var routes = context.DescriptionGroups.SelectMany(group => group.Items).Select(RouteOf);
        var (parsed, diagnostic) = OpenApiDocument.Parse(DocumentAssembly.Of(routes).ToJsonString(), OpenApiConstants.Json);
        if (parsed is null || diagnostic?.Errors.Count > 0)
            throw new InvalidOperationException("The API document is wrong: " + string.Join("; ", diagnostic?.Errors.Select(fault => fault.ToString()) ?? []));
        document.Info = parsed.Info;
        document.Servers = parsed.Servers;
        document.Paths = parsed.Paths;
        document.Webhooks = parsed.Webhooks;
        document.Components = parsed.Components;
        document.Tags = parsed.Tags;
        return Task.CompletedTask;
    }

    private static Route RouteOf(ApiDescription description)
    {
        var metadata = description.ActionDescriptor.EndpointMetadata;
        return new Route(
            description.HttpMethod!.ToLowerInvariant(),
            "/" + description.RelativePath!.Trim('/'),
            metadata.OfType<IEndpointNameMetadata>().LastOrDefault()?.EndpointName ?? "",
            metadata.OfType<AdmittedScopes>().LastOrDefault()?.Any ?? []);
    }
}
