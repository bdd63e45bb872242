using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>What people say of finished jobs.</summary>
internal static class DecisionOperations
{
    public static readonly IReadOnlyList<Operation> All =
    [
        new("postDecision", "Decisions", "Accepts or rejects findings, or approves a sewn sample")
        {
            Description = "The finished job never changes: the decision counts from the next check of these stitches on. "
                + "It is bound to the received stitches (the file's header does not count), cap style, location and technique. "
                + "`accept` lets the named findings stay, each bound to its rule and elements; they come under `accepted` of the next result and count for nothing else. "
                + "It ends when the stitches or the rule's limit change, or when something worse is measured. "
                + "Findings of `ticket.*`, and holds about where needle and cap frame may meet, are accepted for the next check of the same order, line and location only. "
                + "`approveSample` says that a cap sewn from the tape to sew was approved: from then on its order is kept. "
                + "`reject` ends what was accepted before of the named findings; without `findings` it ends everything that was said of these stitches, an approved sample too.",
            Parameters = ["jobId", "idempotencyKey", "contentDigest"],
            Request = [Content.Json("DecisionRequest", "decision-request", "decision-request-sample")],
            Answers = [new(201, "The decision, with what it is bound to.", [Content.Json("Decision", "decision")], "Location", "Idempotency-Replayed")],
            Refusals =
            [
                Problems.RequestMalformed, Problems.HeaderInvalid, Problems.DigestMismatch, Problems.NotFound, Problems.JobNotFinished, Problems.JobFailed,
                Problems.DocumentExpired, Problems.BodyTooLarge, Problems.MediaTypeUnknown, Problems.DecisionInvalid, Problems.IdempotencyKeyReused,
            ],
        },
    ];
}
