using CapPrep.Service.Plumbing;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace CapPrep.Service.Docs;

/// <summary>The API document as bytes: what is served, and what stands in openapi/capprep-v1.json.</summary>
internal sealed class ApiDocument([FromKeyedServices(ApiDocument.Name)] IOpenApiDocumentProvider provider)
{
    public const string Name = "v1";

    private readonly SemaphoreSlim _turn = new(1);
    private byte[]? _bytes;

    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet($"/openapi/{Name}.json", async (ApiDocument document, CancellationToken cancel) =>
            TypedResults.Bytes(await document.Bytes(cancel), Json.ContentType))
        .WithName("getApiDocument");

    /// <summary>Indented JSON with a line feed at its end; made once.</summary>
    public async Task<byte[]> Bytes(CancellationToken cancel)
    {
        await _turn.WaitAsync(cancel);
        try
        {
            return _bytes ??= await Write(cancel);
        }
        finally
        {
            _turn.Release();
        }
    }

    private async Task<byte[]> Write(CancellationToken cancel)
    {
        var document = await provider.GetOpenApiDocumentAsync(cancel);
        var text = await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1, cancel);
        return System.Text.Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n").TrimEnd() + "\n");
    }
}
