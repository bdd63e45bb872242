using System.Text.Json.Nodes;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage.Rows;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What people say of finished jobs.</summary>
internal static class DecisionSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("DecisionRequest", Closed(
            Req("decision", Word<DecisionWord>()),
            Req("by", Text(60), "Who says it; shown wherever it counts."),
            Opt("reason", Text(400)),
            Opt("findings", List(Integer(1, 10_000), 500, 1), "Numbers of open findings of this job's result; rejecting, of accepted ones too. Without it: all that are open. Not with approveSample."))),
        new("Decision", Decision()),
        new("DecidedFinding", Open(
            Req("number", Integer(1, 10_000)),
            Req("rule", Ref("RuleId")),
            Opt("elements", List(Integer(1, 1_000_000), 50), "What it is bound to; absent: wherever the rule meets something in these stitches."),
            Opt("oneJob", Flag(), "true: accepted for the next check of this order, line and location only."))),
        new("DecidedJob", Job()),
        new("Accepted", Open(
            Req("number", Integer(1, 10_000), "Of the finding, counted on behind the list; a decision may reject it by this number."),
            Req("rule", Ref("RuleId")),
            Opt("element", Integer(1, 1_000_000), "Absent: wherever the rule meets something in these stitches."),
            Req("severity", Word<Severity>()),
            Req("message", Text(LongText)),
            Req("by", Text(60)),
            Req("at", Ref("Time")),
            Req("decision", Ref("DecisionId")),
            Opt("reason", Text(400)))),
        new("Approved", Open(
            Req("note", Text(200)),
            Req("orderNumber", Text(64), "Order of the approved sample."),
            Req("sewn", Word("received", "approvedTape"), "Which stitches the tape to sew holds: those received, or those of the approved sample."),
            Req("by", Text(60)),
            Req("at", Ref("Time")),
            Req("decision", Ref("DecisionId")))),
    ];

    private static JsonObject Decision() => Open(
        Req("id", Ref("DecisionId")),
        Req("decision", Word<DecisionWord>()),
        Req("by", Text(60)),
        Opt("reason", Text(400)),
        Req("at", Ref("Time")),
        Req("findings", List(Ref("DecidedFinding"), 500), "Empty: said of the job as a whole."),
        Req("ends", Count(), "How many earlier points it ended: the latest word counts."),
        Opt("ended", Ref("Time"), "When a later decision ended all of it; absent: in force."),
        Req("boundTo", Open(
            Req("receivedStitchesSha256", Ref("Sha256"), "Of positions and kinds of the records; the file's header does not count."),
            Opt("sewnStitchesSha256", Ref("Sha256"), "The same of the tape to sew."),
            Opt("capStyle", Ref("CatalogId")),
            Req("location", Word<CapLocation>()),
            Req("technique", Word<Technique>()))));

    private static JsonObject Job() => Open(
        Req("id", Ref("JobId")),
        Req("number", Integer(1, long.MaxValue / 1024)),
        Req("verdict", Word<Verdict>(), "Of the finished job; a decision does not change it."),
        Req("orderNumber", Text(64)),
        Req("line", Text(32)),
        Req("location", Word<CapLocation>()),
        Opt("customer", Ref("CatalogId")),
        Req("design", Text(255)),
        Req("revision", Integer(1, int.MaxValue)),
        Req("decision", Ref("Decision")),
        Opt("echo", Ref("Echo")),
        Req("links", Open(Req("self", Url(LongText)), Req("result", Url(LongText)))));
}
