using System.Text.Json.Nodes;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs;

/// <summary>Headers of answers by name.</summary>
internal static class AnswerHeaders
{
    /// <summary>On every answer behind a key.</summary>
    public static readonly IReadOnlyList<string> Always = ["RateLimit", "RateLimit-Policy"];

    public static IReadOnlyDictionary<string, JsonObject> All() => new SortedDictionary<string, JsonObject>(StringComparer.Ordinal)
    {
        ["Cache-Control"] = Header("Who may keep the answer.", Text(100)),
        ["Content-Digest"] = Header("sha-256=:…: of the body (RFC 9530).", Text(100)),
        ["Content-Disposition"] = Header("The file's name.", Text(300)),
        ["ETag"] = Header("Tag of what was answered.", Text(100)),
        ["Idempotency-Replayed"] = Header("true when this Idempotency-Key was used before.", Const("true")),
        ["Location"] = Header("Where it stands.", Url(LongText)),
        ["Preference-Applied"] = Header("wait=N when the request waited.", Text(40)),
        ["RateLimit"] = Header("What is left: \"requests\";r=N;t=SECONDS.", Text(100)),
        ["RateLimit-Policy"] = Header("What one key may do: \"requests\";q=N;w=SECONDS.", Text(100)),
        ["Retry-After"] = Header("Seconds to wait.", Integer(1, 86_400)),
        ["Vary"] = Header("Accept: the form depends on it.", Const("Accept")),
        ["WWW-Authenticate"] = Header("Bearer.", Const("Bearer")),
    };

    private static JsonObject Header(string says, JsonObject schema) => new() { ["description"] = says, ["schema"] = schema };
}
