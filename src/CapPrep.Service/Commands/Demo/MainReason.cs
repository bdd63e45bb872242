using System.Text.Json;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The one sentence of a result document that a person must read first.</summary>
internal static class MainReason
{
    /// <summary>
    /// The worst open hold of whom the verdict names; else what the verdict gives as its reason; else the first finding.
    /// </summary>
    public static string Of(JsonElement result)
    {
        var findings = result.GetProperty("findings").EnumerateArray().ToArray();
        var holds = findings.Where(finding => finding.GetProperty("severity").ValueEquals("hold") && IsFor(finding, AskedBy(result)));
        JsonElement[] candidates = [.. holds, .. result.GetProperty("verdictReasons").EnumerateArray(), .. findings];
        return candidates is [var first, ..] ? first.GetProperty("message").GetString()! : "Nothing was found.";
    }

    private static string? AskedBy(JsonElement result) => result.GetProperty("verdict").GetString() switch
    {
        "returnToOrderDesk" => "orderDesk",
        "returnToDigitizer" => "digitizer",
        _ => null,
    };

    private static bool IsFor(JsonElement finding, string? who) =>
        who is not null && finding.TryGetProperty("remedy", out var remedy) && remedy.GetProperty("who").ValueEquals(who);
}
