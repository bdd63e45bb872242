using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Catalog;

/// <summary>
/// Which version a change is meant for (RFC 9110, 13.1): <c>If-None-Match: *</c> creates, <c>If-Match: "3"</c> changes
/// the version that was read.
/// </summary>
/// <param name="Creates">There must be nothing yet.</param>
/// <param name="Tags">Tags of which one must be the newest version's; a star fits any.</param>
internal sealed record Precondition(bool Creates, IReadOnlyList<string> Tags)
{
    private const string Any = "*";

    /// <summary>The strong tag of a version.</summary>
    public static string Tag(int version) => string.Create(CultureInfo.InvariantCulture, $"\"{version}\"");

    public static (Precondition? Precondition, Refusal? Refusal) Read(HttpRequest request, bool mayCreate)
    {
        var create = Split(request.Headers.IfNoneMatch.ToString());
        var change = Split(request.Headers.IfMatch.ToString());
        if (create.Count > 0 && (!mayCreate || change.Count > 0 || create is not [Any]))
            return (null, Malformed("If-None-Match", mayCreate ? "It may hold a star alone, without If-Match beside it." : "It has no meaning here; send If-Match."));
        if (change.FirstOrDefault(tag => !IsTag(tag)) is { } odd)
            return (null, Malformed("If-Match", $"It holds versions in quotation marks, such as \"3\"; {Short(odd)} is none."));
        return create.Count + change.Count > 0
            ? (new Precondition(create.Count > 0, change), null)
            : (null, new Refusal(Problems.VersionRequired, mayCreate ? "The request has neither If-None-Match nor If-Match." : "The request has no If-Match."));
    }

    /// <summary>True when the newest version is one of those meant. Weak tags never fit.</summary>
    public bool Admits(int version) => Tags.Contains(Any) || Tags.Contains(Tag(version));

    private static IReadOnlyList<string> Split(string header) =>
        header.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool IsTag(string text) =>
        text == Any || text.TrimStart('W', '/') is ['"', .., '"'] and { Length: > 1 };

    private static string Short(string text) => text.Length > 40 ? text[..40] : text;

    private static Refusal Malformed(string header, string message) => new(Problems.HeaderInvalid, $"{header} cannot be used.")
    {
        Violations = [new Violation("header", ViolationCodes.BadFormat, message) { Pointer = header }],
    };
}
