using CapPrep.Service.Commands;
using CapPrep.Service.Docs;
using CapPrep.Service.Plumbing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace CapPrep.TestKit.Documents;

/// <summary>The service put together but never started: its routes, and the document that is made of them.</summary>
public static class Composition
{
    private static readonly Lazy<(IReadOnlyList<RouteEndpoint> Routes, byte[] Document)> Made = new(Make);

    public static IReadOnlyList<RouteEndpoint> Routes => Made.Value.Routes;

    /// <summary>The document's bytes.</summary>
    public static byte[] Document => Made.Value.Document;

    public static ApiContract Contract { get; } = new(Document);

    private static (IReadOnlyList<RouteEndpoint>, byte[]) Make()
    {
        var builder = ServiceHost.CreateBuilder([]);
        builder.Configuration.AddInMemoryCollection([new("CapPrep:DataFolder", Path.Combine(Path.GetTempPath(), "capprep-never-made"))]);
        using var app = ServiceHost.Build(builder, SettingsReader.Read(builder.Configuration).Settings!);
        app.UseEndpoints(_ => { });
        var routes = app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().ToArray();
        var document = app.Services.GetRequiredService<ApiDocument>().Bytes(CancellationToken.None).GetAwaiter().GetResult();
        return (routes, document);
    }
}
