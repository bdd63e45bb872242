using System.Text.Json.Nodes;
using CapPrep.Service.Access;

namespace CapPrep.Service.Docs;

/// <summary>The head of the document.</summary>
internal static class About
{
    private const string Description =
        """
        CapPrep looks at an embroidery tape for a finished cap before it is sewn: does it fit this cap style, cap frame and
        machine, is it seated right, what must change, and who must change it. It answers with a verdict, findings, a framing
        card, a marked proof and, when the design may be sewn, the tape to sew.

        **How this API changes.** Answers may gain members; rule ids, event types and problem codes may be added. `status`,
        `verdict`, `severity` and `state` are closed in version 1. Requests with members that are not listed here are refused.
        Arrays are always present; a member that is absent is unknown or does not apply; nothing is ever null.

        **Numbers.** Millimeters to 0.01, degrees to 0.1, shares from 0 to 1 to 0.0001; never NaN. Every figure has its unit
        in its name or beside it. Times are RFC 3339, UTC, with milliseconds. Left and right of a location are the wearer's;
        left and right of coordinates are the viewer's.

        **Keys.** `Authorization: Bearer cpk_…`. A key belongs to one shop and never into an address or a browser.

        **Three ways to hear of a result.** Webhooks push it, `GET /v1/events?after=` is the same log to be pulled with the
        same ids, and `Prefer: wait=20` waits for it in the request. All three carry the same job.

        **Verdicts do not make a machine safe.** Needles, moving frames and steam hurt. What CapPrep says of speeds, framing
        and steaming gives way to local rules, to the machine's own manual and to trained people.
        """;

    private static readonly (string Name, string Says)[] Parts =
    [
        ("Jobs", "One tape and ticket each, from acceptance to its end."),
        ("Documents", "What a finished job leaves: result, card, proof and tapes."),
        ("Decisions", "What people say of finished jobs; it counts from the next check of the same stitches on."),
        ("Events", "The log of what happened."),
        ("Catalog", "Cap styles, cap frames, machines, framing stations, rule books and the shop's defaults; every change is a new version, and a job keeps those it was accepted with."),
        ("Webhooks", "Receivers of events and what was delivered to them, as Standard Webhooks describes it."),
        ("Keys", "Who may do what."),
        ("Health", "Whether the service runs and can do its work."),
        ("Documentation", "This document and the pages about problems."),
    ];

    public static JsonObject Info() => new()
    {
        ["title"] = "CapPrep",
        ["description"] = Description.ReplaceLineEndings("\n"),
        ["license"] = new JsonObject { ["name"] = "MIT", ["identifier"] = "MIT" },
        ["version"] = "1",
    };

    public static JsonArray Tags() =>
        new([.. Parts.Select(part => new JsonObject { ["name"] = part.Name, ["description"] = part.Says })]);

    public static JsonObject Key() => new()
    {
        ["type"] = "http",
        ["scheme"] = "bearer",
        ["bearerFormat"] = $"{KeyForm.Prefix}…",
        ["description"] = $"An API key. It has one or more of the scopes {string.Join(", ", Scopes.All)}; each operation lists those that admit it, and one is enough.",
    };
}
