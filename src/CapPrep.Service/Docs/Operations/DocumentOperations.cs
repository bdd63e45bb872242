using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>What a finished job leaves: result, card, proof and tapes.</summary>
internal static class DocumentOperations
{
    private const string Tag = "Documents";

    private static readonly Content[] Forms =
        [Content.Bytes("application/pdf"), Content.Bytes("image/png"), Content.Bytes("image/svg+xml")];

    private static readonly string[] Headers = ["ETag", "Content-Digest", "Cache-Control", "Content-Disposition"];

    private static readonly Problem[] WhyNone =
        [Problems.NotFound, Problems.JobNotFinished, Problems.JobFailed, Problems.DocumentExpired];

    public static readonly IReadOnlyList<Operation> All =
    [
        new("getResult", Tag, "Gives the result document of a job")
        {
            Description = "Verdict, findings, seating, orders and needle plan. Its bytes never change once the job has ended.",
            Parameters = ["jobId", "ifNoneMatch"],
            Answers = [new(200, "The result.", [Content.Json("Result", "result", "result-returned")], Headers), NotModified],
            Refusals = WhyNone,
        },
        new("getCard", Tag, "Gives the framing card")
        {
            Description = "By `format` first, else by Accept, else PDF. With a return verdict it says HOLD and has no needle plan.",
            Parameters = ["jobId", "format", "ifNoneMatch"],
            Answers = [new(200, "One page for framing station and machine.", Forms, [.. Headers, "Vary"]), NotModifiedForm],
            Refusals = [.. WhyNone, Problems.QueryInvalid, Problems.NotAcceptable],
        },
        new("getProof", Tag, "Gives the marked picture of the design on the cap")
        {
            Description = "By `format` first, else by Accept, else SVG.",
            Parameters = ["jobId", "format", "ifNoneMatch"],
            Answers = [new(200, "The proof.", Forms, [.. Headers, "Vary"]), NotModifiedForm],
            Refusals = [.. WhyNone, Problems.QueryInvalid, Problems.NotAcceptable],
        },
        new("getTape", Tag, "Gives the tape to sew, or another version")
        {
            Description = "After a return verdict there is no tape to sew: nobody may load one. `version=received` is the tape that came in.",
            Parameters = ["jobId", "tapeVersion", "ifNoneMatch"],
            Answers = [new(200, "The stitch file, as an attachment named by the job's number.", [Content.Bytes("application/octet-stream")], Headers), NotModified],
            Refusals = [.. WhyNone, Problems.NoTapeToSew, Problems.QueryInvalid],
        },
    ];

    private static Answer NotModified => Answer.Empty(304, "It is as you have it.", Headers);

    private static Answer NotModifiedForm => Answer.Empty(304, "It is as you have it.", [.. Headers, "Vary"]);
}
