using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Jobs;

/// <summary>DELETE /v1/jobs/{id}: erases tape, ticket, documents and result for good.</summary>
internal static class DeleteJob
{
    public static void Map(IEndpointRouteBuilder routes) => routes
        .MapDelete("/v1/jobs/{id}", Handle)
        .WithName("deleteJob")
        .Admits(Scopes.Manage);

    private static async Task<IResult> Handle(string id, JobEraser eraser, CancellationToken cancel) =>
        await eraser.Erase(id, cancel) switch
        {
            Erased.Yes => TypedResults.NoContent(),
            Erased.Working => new Refusal(Problems.JobWorking, $"The job '{id}' is being worked on.") { RetryAfterSeconds = 1 },
            _ => GetJob.NotFound(id),
        };
}
