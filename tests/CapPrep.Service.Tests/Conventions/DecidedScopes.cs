namespace CapPrep.Service.Tests.Conventions;

/// <summary>
/// Which scopes admit which route, typed here a second time on purpose: a route that is added, or one whose scopes
/// change, fails until somebody has decided it twice.
/// </summary>
internal static class DecidedScopes
{
    private static readonly string[] Kinds = ["cap-frames", "cap-styles", "framing-stations", "machines", "rule-books"];

    public static readonly IReadOnlyList<string> Rows =
    [
        "GET /health/live: ",
        "GET /health/ready: ",
        "GET /openapi/v1.json: ",
        "GET /docs/problems/{code}: ",

        "POST /v1/jobs: submit",
        "GET /v1/jobs: read submit",
        "GET /v1/jobs/{id}: read submit",
        "DELETE /v1/jobs/{id}: manage",

        "GET /v1/jobs/{id}/result: read submit",
        "GET /v1/jobs/{id}/card: floor read submit",
        "GET /v1/jobs/{id}/proof: read submit",
        "GET /v1/jobs/{id}/tape: floor read submit",

        "POST /v1/jobs/{id}/decision: manage",

        "GET /v1/events: read",

        "GET /v1/webhooks: manage",
        "POST /v1/webhooks: manage",
        "GET /v1/webhooks/{id}: manage",
        "PATCH /v1/webhooks/{id}: manage",
        "DELETE /v1/webhooks/{id}: manage",
        "POST /v1/webhooks/{id}/secret: manage",
        "POST /v1/webhooks/{id}/test: manage",
        "GET /v1/webhooks/{id}/deliveries: manage read",
        "GET /v1/webhooks/{id}/deliveries/{delivery}: manage read",

        "GET /v1/keys: manage operate",
        "POST /v1/keys: manage operate",
        "DELETE /v1/keys/{id}: manage operate",

        .. Kinds.SelectMany(Catalog),
        "GET /v1/shop: manage read",
        "PUT /v1/shop: manage",
    ];

    // A storefront sees what there is; who manages reads what is about to be changed.
    private static IEnumerable<string> Catalog(string kind) =>
    [
        $"GET /v1/{kind}: fit manage read",
        $"GET /v1/{kind}/{{id}}: manage read",
        $"GET /v1/{kind}/{{id}}/versions: manage read",
        $"PUT /v1/{kind}/{{id}}: manage",
        $"DELETE /v1/{kind}/{{id}}: manage",
    ];
}
