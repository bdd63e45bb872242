using System.Globalization;
using System.Text;
using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// The reason for a person who finds the folder in the middle of the night: what came, what is wrong and where, what
/// to do now. It says what the problem document says.
/// </summary>
internal static class ReasonText
{
    public static string Of(DropRow drop, DateTimeOffset now)
    {
        using var problem = JsonDocument.Parse(drop.Problem!);
        var root = problem.RootElement;
        var text = new StringBuilder();
        Line(text, IsOurs(Code(root)) ? "CapPrep could not work this design. That is not your fault." : "CapPrep did not take this design. It must not be sewn from this folder.");
        Line(text, "");
        Line(text, "What came");
        foreach (var file in Drops.Read(drop))
            Line(text, $"  {SafeName.Shown(file.Name)}, {file.Bytes} bytes");
        Line(text, $"  seen {Minute(drop.Seen)}, returned {Minute(now)}");
        Line(text, "");
        Line(text, "What is wrong");
        Faults(text, root);
        Line(text, "");
        Line(text, "What to do now");
        foreach (var step in Next(Code(root)))
            Line(text, $"  {step}");
        Line(text, "");
        Line(text, $"The same for programs stands in reason.json. If you ask somebody, name {drop.Id}.");
        return text.ToString();
    }

    private static void Faults(StringBuilder text, JsonElement problem)
    {
        Line(text, $"  {problem.GetProperty("title").GetString()}");
        if (!problem.TryGetProperty("violations", out var violations))
        {
            Line(text, $"  {problem.GetProperty("detail").GetString()}");
            return;
        }

        var number = 0;
        foreach (var violation in violations.EnumerateArray())
        {
            number++;
            Line(text, $"  {number}. {Place(violation)}{violation.GetProperty("message").GetString()}");
            if (violation.TryGetProperty("allowed", out var allowed))
                Line(text, $"     Allowed: {string.Join(", ", allowed.EnumerateArray().Select(word => word.GetString()))}");
        }

        if (problem.TryGetProperty("violationsLeftOut", out var more))
            Line(text, $"  and {more.GetInt32()} more.");
    }

    /// <summary>Where to look: a member of the ticket, or a byte of the tape.</summary>
    private static string Place(JsonElement violation) => (violation.GetProperty("part").GetString(), violation) switch
    {
        ("ticket", _) when Pointer(violation) is { Length: > 1 } pointer => $"In the ticket, {pointer[1..].Replace('/', ' ')}: ",
        ("ticket", _) => "The ticket: ",
        ("tape", _) when violation.TryGetProperty("byteOffset", out var offset) => $"The tape, byte {offset.GetInt64()}: ",
        ("tape", _) => "The tape: ",
        _ => "",
    };

    private static string? Pointer(JsonElement violation) =>
        violation.TryGetProperty("pointer", out var pointer) ? pointer.GetString() : null;

    private static string[] Next(string code) => code switch
    {
        "ticket-invalid" => ["Correct the ticket (the .json file) as said above. " + Again, Untouched],
        "tape-invalid" or "tape-too-large" => ["Export the design again as DST, or ask the digitizer for it. " + Again, Untouched],
        "ticket-too-large" => ["Make the ticket shorter. " + Again, Untouched],
        "drop-invalid" => ["Put tape and ticket together: NAME.dst with NAME.json, or both in NAME.zip, one design per NAME. " + Again, Untouched],
        "not-found" => ["Somebody erased the job on purpose. If the design is still wanted, put both files into the folder drop again.", Deletable],
        _ => ["Put both files into the folder drop again later. If they come back again, tell whoever runs CapPrep.", Deletable],
    };

    private const string Again = "Then put both files into the folder drop again.";
    private const string Untouched = "No job was made and nothing was changed in the files beside this one; when it is settled, this folder can be deleted.";
    private const string Deletable = "The files beside this one are as they came; when it is settled, this folder can be deleted.";

    private static bool IsOurs(string code) => code == Problems.OurFault.Code || code == Problems.JobFailed.Code;

    private static string Code(JsonElement problem) => problem.GetProperty("code").GetString()!;

    private static string Minute(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, string line) => text.Append(SafeName.Shown(line)).Append('\n');
}
