using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Calls;

/// <summary>JSON bodies of our own small resources: how they are read, and in one way what is wrong with them.</summary>
internal static class SmallBody
{
    /// <summary>Longest body in bytes.</summary>
    public const int MaxBytes = 16 * 1024;

    /// <summary>The part that the violations of such a body name.</summary>
    public const string Part = "body";

    /// <summary>Reads the body; with <paramref name="optional"/>, none at all is no bytes.</summary>
    /// <param name="types">The content types to name where it has another.</param>
    public static Task<RequestBody> Read(
        HttpRequest request, CancellationToken cancel, bool optional = false, string types = Json.ContentType) =>
        optional && request.ContentType is null
            ? RequestBody.Read(request, MaxBytes, cancel)
            : RequestBody.ReadJson(request, MaxBytes, cancel, types);

    /// <summary>The refusal of a body with faults: 400 when it is not JSON, else 422; the detail lists the places.</summary>
    /// <param name="problem">Where it is JSON; null: <c>question-invalid</c>.</param>
    public static Refusal Refuse(IReadOnlyList<Violation> violations, Problem? problem = null)
    {
        var broken = violations.Any(violation => violation.ByteOffset is not null);
        var places = violations.Select(Place).Distinct().Take(10);
        var count = violations.Count == 1 ? "1 fault" : string.Create(CultureInfo.InvariantCulture, $"{violations.Count} faults");
        return new Refusal(
            broken ? Problems.RequestMalformed : problem ?? Problems.QuestionInvalid,
            $"{count} in the body: {string.Join(", ", places)}.")
        { Violations = violations };
    }

    private static string Place(Violation violation) => violation switch
    {
        { ByteOffset: { } offset } => string.Create(CultureInfo.InvariantCulture, $"byte {offset}"),
        { Pointer: { Length: > 0 } pointer } => pointer,
        _ => "the whole",
    };
}
