using System.Security.Cryptography;
using System.Text;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>A decision as it was sent.</summary>
/// <param name="Findings">Numbers of the job's findings; null: none were named.</param>
internal sealed record DecisionBody(DecisionWord Decision, string By, string? Reason, IReadOnlyList<int>? Findings)
{
    public const int LongestBy = 60;
    public const int LongestReason = 400;
    public const int MostFindings = 500;
    public const int HighestNumber = 10_000;

    /// <summary>What two requests must have in common to be the same.</summary>
    public string Print(string shop, string job)
    {
        var body = Json.Bytes(writer =>
        {
            writer.WriteStartObject();
            writer.WriteString("decision", Words<DecisionWord>.Standard.Of(Decision));
            writer.WriteString("by", By);
            if (Reason is not null)
                writer.WriteString("reason", Reason);
            if (Findings is not null)
            {
                writer.WriteStartArray("findings");
                foreach (var finding in Findings)
                    writer.WriteNumberValue(finding);
                writer.WriteEndArray();
            }

            writer.WriteEndObject();
        });
        return Convert.ToHexStringLower(SHA256.HashData([.. Encoding.UTF8.GetBytes($"capprep-decision-1\n{shop}\n{job}\n"), .. body]));
    }

    /// <summary>Reads the body, with every fault.</summary>
    public static ReadResult<DecisionBody> Read(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, NewFaults(), body =>
        {
            body.Require("decision", "by");
            var decision = body.Choice("decision", Words<DecisionWord>.Standard);
            var by = body.Text("by", LongestBy);
            var reason = body.Text("reason", LongestReason);
            var findings = ReadFindings(body);
            return decision is null || by is null ? null : new DecisionBody(decision.Value, by, reason, findings);
        });

    public static Faults NewFaults() => new(SmallBody.Part, "A decision");

    private static IReadOnlyList<int>? ReadFindings(ObjectReader body)
    {
        var numbers = body.Items("findings", 1, MostFindings, (element, pointer) =>
        {
            if (body.NumberOf(element, pointer, 1, HighestNumber) is not { } number)
                return null;
            if (Math.Truncate(number) == number)
                return (object)(int)number;
            body.Faults.WrongType(pointer, "A whole number", $"the number {element.GetRawText()}");
            return null;
        });
        return numbers is null ? null : [.. numbers.Cast<int>()];
    }
}
