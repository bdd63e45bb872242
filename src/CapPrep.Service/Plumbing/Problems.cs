namespace CapPrep.Service.Plumbing;

/// <summary>One kind of refusal: code, status, and what stands on its page.</summary>
/// <param name="Code">Last segment of the problem's <c>type</c>.</param>
/// <param name="Status">HTTP status it is answered with.</param>
/// <param name="Title">The same sentence every time.</param>
/// <param name="Help">What the one who gets it can do.</param>
internal sealed record Problem(string Code, int Status, string Title, string Help);

/// <summary>The one list of problem codes (RFC 9457).</summary>
internal static class Problems
{
    public static readonly Problem RequestMalformed = new("request-malformed", 400,
        "The request is not of the form this address reads.", "Send JSON, and tapes inside JSON as base64; the violation names the byte or the member.");

    public static readonly Problem MultipartInvalid = new("multipart-invalid", 400,
        "The multipart body does not hold exactly the parts asked for.", "Send multipart/form-data with one part 'ticket' (JSON) and one part 'tape' (the file), in any order, each once.");

    public static readonly Problem HeaderInvalid = new("header-invalid", 400,
        "A request header cannot be used as it is.", "The violation names the header and what it may hold.");

    public static readonly Problem QueryInvalid = new("query-invalid", 400,
        "A query parameter cannot be used as it is.", "The violation names the parameter; a cursor belongs to the filters it was given with.");

    public static readonly Problem KeyInUrl = new("key-in-url", 400,
        "An API key stands in the address.", "Addresses end up in logs. Send the key in the header 'Authorization: Bearer', and end the key that stood in the address.");

    public static readonly Problem DigestMismatch = new("digest-mismatch", 400,
        "The body is not the one that Content-Digest was made of.", "Send it again; it was changed on the way or the digest was made of other bytes.");

    public static readonly Problem KeyMissing = new("key-missing", 401,
        "No API key was sent.", "Send the header 'Authorization: Bearer cpk_...'.");

    public static readonly Problem KeyInvalid = new("key-invalid", 401,
        "The API key is not known here.", "Check for a cut-off key, another installation, or a key that was ended.");

    public static readonly Problem KeyExpired = new("key-expired", 401,
        "The API key has expired.", "Make a new one with POST /v1/keys.");

    public static readonly Problem ScopeMissing = new("scope-missing", 403,
        "The API key may not do this.", "Use a key with the scope that the detail names.");

    public static readonly Problem NotFound = new("not-found", 404,
        "There is nothing at this address.", "Check the id; things of other shops are not shown either.");

    public static readonly Problem MethodNotAllowed = new("method-not-allowed", 405,
        "This address does not take this method.", "The header Allow lists the methods it takes.");

    public static readonly Problem NotAcceptable = new("not-acceptable", 406,
        "None of the accepted types can be given.", "The violation lists the types there are; '?format=' chooses one.");

    public static readonly Problem JobNotFinished = new("job-not-finished", 409,
        "The job has not ended yet.", "Ask again after the seconds in Retry-After, or wait with 'Prefer: wait=20'.");

    public static readonly Problem JobFailed = new("job-failed", 409,
        "The job failed by our fault; it has no documents.", "The job's 'failure' says what is known. Tape and ticket are kept.");

    public static readonly Problem JobWorking = new("job-working", 409,
        "The job is being worked on.", "Delete it when it has ended.");

    public static readonly Problem NoTapeToSew = new("no-tape-to-sew", 409,
        "This design must not be sewn as it is, so there is no tape to sew.", "The result says who must change what. '?version=received' gives the tape that came in.");

    public static readonly Problem IdExists = new("id-exists", 409,
        "This id is taken.", "Use If-Match with the version you read to add a version.");

    public static readonly Problem DocumentExpired = new("document-expired", 410,
        "The document is past its retention.", "Send the tape and ticket again to have it made anew.");

    public static readonly Problem EventExpired = new("event-expired", 410,
        "Events behind this id are no longer kept in full.", "Begin again without 'after'; the detail names the oldest event kept.");

    public static readonly Problem VersionMismatch = new("version-mismatch", 412,
        "Somebody has changed this since you read it.", "Read it again and repeat the change on the new version.");

    public static readonly Problem BodyTooLarge = new("body-too-large", 413,
        "The request is larger than this address takes.", "The detail names the limit.");

    public static readonly Problem TapeTooLarge = new("tape-too-large", 413,
        "The tape is larger than this service takes.", "The detail names the limit; no cap design comes near it.");

    public static readonly Problem TicketTooLarge = new("ticket-too-large", 413,
        "The ticket is larger than this service takes.", "The detail names the limit.");

    public static readonly Problem MediaTypeUnknown = new("media-type-unknown", 415,
        "This content type is not read here.", "The detail lists the types that are.");

    public static readonly Problem TicketInvalid = new("ticket-invalid", 422,
        "The ticket cannot be used as it is.", "Every fault found is listed with its place; mend them all and send it again.");

    public static readonly Problem TapeInvalid = new("tape-invalid", 422,
        "This file is not a tape that a machine can run.", "The violation names the byte. Export the design again as DST.");

    public static readonly Problem CatalogInvalid = new("catalog-invalid", 422,
        "The resource cannot be stored as it is.", "Every fault found is listed with its place.");

    public static readonly Problem RuleBookInvalid = new("rule-book-invalid", 422,
        "The rule book cannot be stored as it is.", "Every fault found is listed with its place.");

    public static readonly Problem QuestionInvalid = new("question-invalid", 422,
        "The body cannot be used as it is.", "Every fault found is listed with its place.");

    public static readonly Problem DecisionInvalid = new("decision-invalid", 422,
        "This cannot be decided on this job.", "Every fault found is listed with its place. Findings are named by their numbers in the job's result, and only open ones can be accepted.");

    public static readonly Problem AddressNotAllowed = new("address-not-allowed", 422,
        "This address may not be called from here.", "Use a public https address, or ask the operator to add the receiver to Webhooks:AllowedNetworks.");

    public static readonly Problem DropInvalid = new("drop-invalid", 422,
        "What was put into the hot folder cannot be taken as it is.", "One design is NAME.dst with NAME.json, or NAME.zip with one of each; the violation says what is missing or too much. Nothing was stored.");

    public static readonly Problem BuiltIn = new("built-in", 422,
        "This is built in and cannot be changed.", "Make a rule book of your own that is based on it.");

    public static readonly Problem IdempotencyKeyReused = new("idempotency-key-reused", 422,
        "This Idempotency-Key was used for another request.", "Use a new key for a new request; repeat a request with its own key and content.");

    public static readonly Problem VersionRequired = new("version-required", 428,
        "The request does not say which version it changes.", "Send If-None-Match: * to create, or If-Match with the version you read.");

    public static readonly Problem RateLimited = new("rate-limited", 429,
        "Too many requests with this key.", "Wait the seconds in Retry-After.");

    public static readonly Problem WrongKeys = new("wrong-keys", 429,
        "Too many wrong keys from this address.", "Wait the seconds in Retry-After, then send a right one.");

    public static readonly Problem OurFault = new("our-fault", 500,
        "Something is wrong on our side.", "Try again; if it stays, tell the operator the trace id.");

    public static readonly Problem Overloaded = new("overloaded", 503,
        "Too many jobs are waiting.", "Send it again after the seconds in Retry-After; nothing was stored.");

    public static readonly Problem DatabaseAway = new("database-away", 503,
        "The database does not answer.", "Send it again after the seconds in Retry-After; nothing was stored.");

    public static readonly Problem StorageFull = new("storage-full", 507,
        "The disk is full.", "Nothing was stored. The operator must make room.");

    /// <summary>Every problem there is, sorted by status and code.</summary>
    public static readonly IReadOnlyList<Problem> All =
    [
        .. typeof(Problems).GetFields()
            .Where(field => field.FieldType == typeof(Problem))
            .Select(field => (Problem)field.GetValue(null)!)
            .OrderBy(problem => problem.Status)
            .ThenBy(problem => problem.Code, StringComparer.Ordinal),
    ];
}
