using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>Jobs, their lists and the log of events.</summary>
internal static class JobOperations
{
    public static readonly IReadOnlyList<Operation> All =
    [
        new("postJob", "Jobs", "Sends a tape and its ticket to be prepared")
        {
            Description = "Accepted means stored: 202 with the job as it is, or 200 with `Prefer: wait=N` when it ended in time. Every fault found in ticket and tape is listed at once.",
            Parameters = ["idempotencyKey", "prefer", "contentDigest"],
            Request = [new(Content.Multipart, "JobParts", "job-parts", "job-parts-full"), Content.Json("JobRequest", "job-request")],
            Answers =
            [
                new(200, "The job has ended.", [Content.Json("Job", "job", "job-failed")], [.. Accepted]),
                new(202, "The job waits or is being worked on.", [Content.Json("Job", "job-queued")], [.. Accepted]),
            ],
            Refusals =
            [
                Problems.RequestMalformed, Problems.MultipartInvalid, Problems.HeaderInvalid, Problems.DigestMismatch, Problems.NotFound,
                Problems.BodyTooLarge, Problems.TapeTooLarge, Problems.TicketTooLarge, Problems.MediaTypeUnknown,
                Problems.TicketInvalid, Problems.TapeInvalid, Problems.IdempotencyKeyReused, Problems.Overloaded,
            ],
        },
        new("listJobs", "Jobs", "Lists jobs")
        {
            Description = "By receipt, newest first, or with `sort=changed` by change, oldest first: keep the last cursor, ask again with it, and no change is missed.",
            Parameters =
            [
                "orderNumber", "line", "customer", "capStyle", "digitizer", "status", "verdict", "door", "latest",
                "receivedFrom", "receivedTo", "sort", "limit", "cursor",
            ],
            Answers = [new(200, "A page of jobs, without their tickets.", [Content.Json("JobList", "job-list")])],
            Refusals = [Problems.QueryInvalid],
        },
        new("getJob", "Jobs", "Shows a job, at once or when it has ended")
        {
            Parameters = ["jobId", "prefer", "ifNoneMatch"],
            Answers =
            [
                new(200, "The job as it is now.", [Content.Json("Job", "job", "job-queued", "job-failed")], "ETag", "Cache-Control", "Preference-Applied"),
                Answer.Empty(304, "It is as you have it.", "ETag", "Cache-Control"),
            ],
            Refusals = [Problems.NotFound],
        },
        new("deleteJob", "Jobs", "Erases tape, ticket, documents and result for good")
        {
            Description = "Events of the job stay, without its echo.",
            Parameters = ["jobId"],
            Answers = [Answer.Empty(204, "Erased.")],
            Refusals = [Problems.NotFound, Problems.JobWorking],
        },
        new("listEvents", "Events", "Gives the log behind an event, oldest first")
        {
            Description = "The same bodies and ids that webhooks carry, each once and in the order of commits.",
            Parameters = ["after", "eventType", "limit", "prefer"],
            Answers = [new(200, "Events, and what to ask with next time.", [Content.Json("EventFeed", "event-feed")], "Preference-Applied")],
            Refusals = [Problems.QueryInvalid, Problems.EventExpired],
        },
    ];

    private static string[] Accepted => ["Location", "ETag", "Cache-Control", "Preference-Applied", "Idempotency-Replayed"];
}
