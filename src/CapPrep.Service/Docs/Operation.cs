using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs;

/// <summary>What the document says of one operation. Method, path and scopes come from the route itself.</summary>
/// <param name="Id">The route's name.</param>
internal sealed record Operation(string Id, string Tag, string Summary)
{
    public string? Description { get; init; }

    /// <summary>Names of <see cref="Parameters.All"/>.</summary>
    public IReadOnlyList<string> Parameters { get; init; } = [];

    /// <summary>The same request in its forms; empty: no body.</summary>
    public IReadOnlyList<Content> Request { get; init; } = [];

    public bool RequestMayBeAbsent { get; init; }

    public IReadOnlyList<Answer> Answers { get; init; } = [];

    /// <summary>Beside those that every operation behind a key has.</summary>
    public IReadOnlyList<Problem> Refusals { get; init; } = [];
}

/// <summary>An answer that is no problem.</summary>
/// <param name="Headers">Names of <see cref="AnswerHeaders.All"/>.</param>
internal sealed record Answer(int Status, string Says, IReadOnlyList<Content> Contents, params IReadOnlyList<string> Headers)
{
    /// <summary>An answer without a body.</summary>
    public static Answer Empty(int status, string says, params IReadOnlyList<string> headers) => new(status, says, [], headers);
}

/// <summary>A body in one media type.</summary>
/// <param name="Schema">Name of a schema; null: bytes.</param>
/// <param name="Examples">Names of examples; at least one unless the body is bytes.</param>
internal sealed record Content(string MediaType, string? Schema, params IReadOnlyList<string> Examples)
{
    public const string Multipart = "multipart/form-data";

    public static Content Json(string schema, params IReadOnlyList<string> examples) => new(Plumbing.Json.ContentType, schema, examples);

    public static Content Bytes(string mediaType) => new(mediaType, null);
}
