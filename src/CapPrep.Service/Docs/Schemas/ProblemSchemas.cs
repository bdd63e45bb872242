using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>Refusals (RFC 9457) and the answers about the service itself.</summary>
internal static class ProblemSchemas
{
    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Problem", Whole()),
        new("Violation", Fault()),
        new("Live", Open(Req("status", Const("live")))),
        new("Ready", Open(
            Req("status", Word("ready", "notReady")),
            Req("roles", List(Text(20), 10)),
            Opt("oldestWaitingSeconds", Integer(0, long.MaxValue / 1024)),
            Req("trouble", List(Text(LongText), 20)))),
        new("Document", new JsonObject { ["type"] = "object", ["description"] = "An OpenAPI 3.1 document." }),
    ];

    private static JsonObject Whole() => Open(
        Req("type", Url(120), "/docs/problems/ and the code: a page that explains it."),
        Req("title", Text(200), "The same for every problem of this code."),
        Req("status", Integer(400, 599)),
        Opt("detail", Text(LongText), "A sentence for this case."),
        Opt("instance", Url(LongText)),
        Req("code", Pattern(60, "^[a-z0-9-]+$"), "Codes may be added: " + string.Join(", ", Problems.All.Select(problem => problem.Code)) + "."),
        Opt("traceId", Text(64), "Stands in the service's log too."),
        Opt("violations", List(Ref("Violation"), Refusal.MostListed), "Every fault found."),
        Opt("violationsLeftOut", Count()));

    private static JsonObject Fault() => Open(
        Req("part", Word("body", "header", "query", "tape", "ticket")),
        Opt("pointer", Ref("Pointer"), "The member, or the name of the parameter or header."),
        Opt("byteOffset", Integer(0, long.MaxValue / 1024)),
        Req("code", Pattern(60, "^[a-z0-9-]+$"), "Codes may be added: " + string.Join(", ", Codes()) + "."),
        Req("message", Text(LongText)),
        Opt("minimum", Number(-1e12, 1e12)),
        Opt("maximum", Number(-1e12, 1e12)),
        Opt("allowed", List(AnyText(200), 2000)));

    private static IEnumerable<string> Codes() => typeof(ViolationCodes).GetFields()
        .Select(field => (string)field.GetRawConstantValue()!)
        .Order(StringComparer.Ordinal);
}
