using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>Health and documentation: what needs no key.</summary>
internal static class ServiceOperations
{
    public static readonly IReadOnlyList<Operation> All =
    [
        new("getLive", "Health", "Says that the process runs")
        {
            Answers = [new(200, "It runs.", [Content.Json("Live", "live")])],
        },
        new("getReady", "Health", "Says whether the service can do its work, and if not, why")
        {
            Answers =
            [
                new(200, "It can.", [Content.Json("Ready", "ready")]),
                new(503, "It cannot; `trouble` says why.", [Content.Json("Ready", "not-ready")]),
            ],
        },
        new("getApiDocument", "Documentation", "This document")
        {
            Answers = [new(200, "OpenAPI 3.1.", [Content.Json("Document", "api-document")])],
        },
        new("getProblemPage", "Documentation", "Explains one problem code")
        {
            Parameters = ["problemCode"],
            Answers = [new(200, "A page for people.", [Content.Bytes("text/html")])],
            Refusals = [Problems.NotFound],
        },
    ];
}
