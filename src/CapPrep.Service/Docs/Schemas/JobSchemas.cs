using System.Text.Json.Nodes;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using CapPrep.Service.Storage.Rows;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>A job in its three forms: whole, in a list, in an event.</summary>
internal static class JobSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Job", Open([.. Head(), .. Moving(), Decided(), Req("ticket", Ref("ResolvedTicket")), .. Tail()])),
        new("JobListItem", Open([.. Head(), .. Moving(), .. Tail()])),
        new("JobOfEvent", Open([.. Head(), .. Tail()])),
        new("JobInputs", Inputs()),
        new("JobLinks", Links()),
        new("JobFailure", Failure()),
        new("FindingCounts", Open(Req("hold", Count()), Req("warn", Count()), Req("note", Count()), Req("solved", Count()), Opt("accepted", Count(), "By people before; absent: none."))),
        new("VerdictReason", Open(Req("rule", Ref("RuleId")), Req("finding", Integer(1, 10_000), "Number of the finding."), Req("message", Text(LongText)))),
        new("DeliveryCounts", Open(Req("owed", Count()), Req("delivered", Count()), Req("givenUp", Count()))),
    ];

    private static Member[] Head() => [.. Outcome(), .. Order(), .. History()];

    private static Member[] Outcome() =>
    [
        Req("id", Ref("JobId")),
        Req("number", Integer(1, long.MaxValue / 1024), "The shop's own number, printed on the card and the name of the tape."),
        Req("status", Word<JobStatus>()),
        Opt("verdict", Word<Verdict>(), "Only when finished, as the next three."),
        Opt("verdictReasons", List(Ref("VerdictReason"), 500)),
        Opt("actors", List(Ref("Actor"), 4), "Everybody who must act."),
        Opt("findings", Ref("FindingCounts")),
    ];

    private static Member[] Order() =>
    [
        Req("orderNumber", Text(64)),
        Req("line", Text(32)),
        Req("location", Word<CapLocation>()),
        Opt("customer", Ref("CatalogId")),
        Req("design", Text(255)),
        Req("quantity", Integer(1, TicketReader.MostCaps)),
    ];

    private static Member[] History() =>
    [
        Req("revision", Integer(1, int.MaxValue), "Counts the jobs of this order, line and location."),
        Opt("replaces", Ref("JobId")),
        Opt("replacedBy", Ref("JobId")),
        Opt("recheckOf", Ref("JobId")),
        Req("latest", Flag(), "False when a later revision came."),
        Req("door", Word<Door>(), "Where it came in."),
        Opt("drop", Ref("DropId"), "Only with door folder."),
        Opt("fileName", Text(255)),
        Req("received", Ref("Time")),
        Opt("started", Ref("Time")),
        Opt("finished", Ref("Time")),
        Req("changed", Ref("Time")),
    ];

    private static Member[] Moving() =>
    [
        Req("attempts", Count(), "How often work on it began."),
        Req("deliveries", Ref("DeliveryCounts")),
    ];

    private static Member Decided() =>
        Req("decisions", List(Ref("Decision"), 1000), "What people said of this job, oldest first.");

    private static Member[] Tail() =>
    [
        Req("inputs", Ref("JobInputs")),
        Opt("tapeToSew", Open(Req("sha256", Ref("Sha256")), Req("changes", List(Word<TapeChange>(), 7))), "Absent with a return verdict: no such tape may be loaded."),
        Opt("failure", Ref("JobFailure"), "Only when failed."),
        Opt("echo", Ref("Echo")),
        Req("links", Ref("JobLinks")),
    ];

    private static JsonObject Inputs() => Open(
        Req("tapeSha256", Ref("Sha256")),
        Req("engineVersion", Text(40)),
        Opt("capStyle", Ref("VersionedId"), "Absent when the ticket's article number is unknown."),
        Req("capFrame", Ref("VersionedId")),
        Req("machine", Ref("VersionedId")),
        Req("framingStation", Ref("VersionedId")),
        Req("ruleBook", Open(Req("id", Ref("CatalogId")), Req("version", Integer(1, int.MaxValue)), Opt("basedOn", Ref("VersionedId")))),
        Opt("styleSuggestions", List(Ref("CatalogId"), 10_000), "With an unknown article number: the styles that come nearest."),
        Opt("otherStyles", List(Ref("VersionedId"), 50), "Cap styles that could be taken instead, should the design be too large."),
        Opt("earlier", Ref("JobId"), "The newest finished job of the same order, line and location: what `revision` of the result compares with."),
        Opt("decisions", List(Ref("DecisionId"), 50), "What people had decided on these stitches, as far as it was in force."),
        Opt("calibration", Ref("VersionedId")),
        Opt("qrPrefix", AnyText(60)))
        .Says("What the job depends on, pinned at acceptance.");

    private static JsonObject Links() => Open(
        Req("self", Url(LongText)),
        Opt("result", Url(LongText)),
        Opt("card", Url(LongText)),
        Opt("proof", Url(LongText)),
        Opt("brief", Url(LongText)),
        Opt("tape", Url(LongText), "The tape to sew."),
        Opt("receivedTape", Url(LongText)),
        Opt("order", Url(LongText), "The jobs of this order."));

    private static JsonObject Failure() => Open(
        Req("code", Word("drawing-fault", "engine-fault", "loss-check-failed", "time-limit", "too-many-attempts")),
        Req("errorId", Text(64)),
        Req("message", Text(LongText)),
        Req("attempts", Count()));
}
