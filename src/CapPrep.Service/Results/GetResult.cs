using CapPrep.Service.Access;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Results;

/// <summary>GET /v1/jobs/{id}/result: the result document.</summary>
internal static class GetResult
{
    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapGet("/v1/jobs/{id}/result", Handle)
        .WithName("getResult")
        .Admits(Scopes.Read, Scopes.Submit);

    private static async Task<IResult> Handle(string id, AppDb db, DocumentStore documents, CancellationToken cancel)
    {
        var (job, refusal) = await EndedJob.Find(db, id, cancel);
        if (job is null)
            return refusal!;
        return await documents.Find(id, DocumentKinds.Result, cancel) is { } document
            ? new DocumentAnswer(document, $"{job.Number}-result.json", Attachment: false)
            : EndedJob.Expired("result");
    }
}
