using System.Text.Json.Serialization;
using Microsoft.OpenApi;

namespace CapPrep.Service.Docs;

internal static class DocsSetup
{
    public static IServiceCollection AddDocs(this IServiceCollection services) => services
        .ConfigureHttpJsonOptions(options => options.SerializerOptions.NumberHandling = JsonNumberHandling.Strict)
        .AddOpenApi(ApiDocument.Name, options =>
        {
            options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
            options.AddDocumentTransformer<ApiTransformer>();
        })
        .AddSingleton<ApiDocument>();

    public static void MapDocs(this IEndpointRouteBuilder routes)
    {
        ProblemPages.Map(routes);
        ApiDocument.Map(routes);
    }
}
