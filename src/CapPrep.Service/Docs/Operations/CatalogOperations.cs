using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Docs.Operations;

/// <summary>The catalog: five kinds of resources with the same six operations, and the shop.</summary>
internal static class CatalogOperations
{
    private const string Tag = "Catalog";
    private const string RoundTrip = "What GET gave may be changed and sent back: `version`, `by`, `at` and `retired` are passed over.";

    private static readonly Kind[] Kinds =
    [
        new("CapStyle", "cap style", "cap-style", "CapStyle", "StoredCapStyle"),
        new("CapFrame", "cap frame", "cap-frame", "CapFrame", "StoredCapFrame"),
        new("Machine", "machine", "machine", "Machine", "StoredMachine"),
        new("FramingStation", "framing station", "framing-station", "FramingStation", "StoredFramingStation"),
        new("RuleBook", "rule book", "rule-book", "RuleBook", "AnyRuleBook"),
    ];

    public static readonly IReadOnlyList<Operation> All =
    [
        .. Kinds.SelectMany(kind => new[] { List(kind), Get(kind), Versions(kind), Put(kind), Retire(kind) }),
        new("getShop", Tag, "Shows what this shop has decided for all its jobs")
        {
            Parameters = ["version", "ifNoneMatch"],
            Answers =
            [
                new(200, "The version asked for.", [Content.Json("StoredShop", "stored-shop")], "ETag", "Cache-Control"),
                Answer.Empty(304, "It is as you have it.", "ETag", "Cache-Control"),
            ],
            Refusals = [Problems.QueryInvalid, Problems.NotFound],
        },
        new("putShop", Tag, "Adds a version of the shop's decisions")
        {
            Description = "`If-Match` with the version you read adds a version. " + RoundTrip,
            Parameters = ["ifMatch", "createOnly", "contentDigest"],
            Request = [Content.Json("Shop", "shop")],
            Answers =
            [
                new(200, "The new version.", [Content.Json("StoredShop", "stored-shop")], "ETag", "Cache-Control"),
                new(201, "The first version.", [Content.Json("StoredShop", "stored-shop")], "ETag", "Cache-Control", "Location"),
            ],
            Refusals = [.. Changing, Problems.CatalogInvalid],
        },
    ];

    private static Problem[] Changing =>
    [
        Problems.HeaderInvalid, Problems.RequestMalformed, Problems.DigestMismatch, Problems.IdExists,
        Problems.VersionMismatch, Problems.VersionRequired, Problems.BodyTooLarge, Problems.MediaTypeUnknown,
    ];

    private static Operation List(Kind kind) => new($"list{kind.One}s", Tag, $"Lists every {kind.Noun} in use, newest versions")
    {
        Parameters = ["limit", "cursor"],
        Answers = [new(200, "A page.", [Content.Json($"{kind.One}List", $"list-of-{kind.Example}s")])],
        Refusals = [Problems.QueryInvalid],
    };

    private static Operation Get(Kind kind) => new($"get{kind.One}", Tag, $"Shows one {kind.Noun}, the newest version or another")
    {
        Parameters = kind.IsBook
            ? ["catalogId", "version", "effective", "customer", "capStyle", "location", "ifNoneMatch"]
            : ["catalogId", "version", "ifNoneMatch"],
        Answers =
        [
            new(200, "The version asked for.", [Content.Json(kind.Stored, kind.IsBook ? ["stored-rule-book", "rule-book-effective"] : [$"stored-{kind.Example}"])], "ETag", "Cache-Control"),
            Answer.Empty(304, "It is as you have it.", "ETag", "Cache-Control"),
        ],
        Refusals = [Problems.QueryInvalid, Problems.NotFound],
    };

    private static Operation Versions(Kind kind) => new($"list{kind.One}Versions", Tag, $"Lists the versions of one {kind.Noun}, newest first")
    {
        Parameters = ["catalogId", "limit", "cursor"],
        Answers = [new(200, "A page.", [Content.Json("VersionList", "versions")])],
        Refusals = [Problems.QueryInvalid, Problems.NotFound],
    };

    private static Operation Put(Kind kind) => new($"put{kind.One}", Tag, $"Creates a {kind.Noun} or adds a version")
    {
        Description = "`If-None-Match: *` creates; `If-Match` with the version you read adds a version. Jobs that were accepted before keep the version they have. " + RoundTrip,
        Parameters = ["catalogId", "ifMatch", "createOnly", "contentDigest"],
        Request = [Content.Json(kind.Schema, kind.Example)],
        Answers =
        [
            new(200, "The new version.", [Content.Json(kind.Stored, $"stored-{kind.Example}")], "ETag", "Cache-Control"),
            new(201, "The first version.", [Content.Json(kind.Stored, $"stored-{kind.Example}")], "ETag", "Cache-Control", "Location"),
        ],
        Refusals = [.. Changing, .. kind.IsBook ? [Problems.RuleBookInvalid, Problems.BuiltIn] : new[] { Problems.CatalogInvalid }],
    };

    private static Operation Retire(Kind kind) => new($"retire{kind.One}", Tag, $"Retires a {kind.Noun}")
    {
        Description = "New tickets that name it are refused; jobs keep the version they have. A PUT with If-Match brings it back.",
        Parameters = ["catalogId", "ifMatch"],
        Answers = [Answer.Empty(204, "Retired.")],
        Refusals =
        [
            Problems.HeaderInvalid, Problems.NotFound, Problems.VersionMismatch, Problems.VersionRequired,
            .. kind.IsBook ? new[] { Problems.BuiltIn } : [],
        ],
    };

    private sealed record Kind(string One, string Noun, string Example, string Schema, string Stored)
    {
        public bool IsBook => Schema == "RuleBook";
    }
}
