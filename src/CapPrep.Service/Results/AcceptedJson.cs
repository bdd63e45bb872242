using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Approvals;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Results;

/// <summary>Writes what people have accepted and approved.</summary>
internal static class AcceptedJson
{
    /// <summary>One item for each word that counted; items of one finding share its number.</summary>
    public static void Write(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteStartArray("accepted");
        foreach (var (finding, words) in preparation.Accepted)
        {
            foreach (var word in words)
            {
                writer.WriteStartObject();
                writer.WriteNumber("number", finding.Number);
                writer.WriteString("rule", finding.Rule);
                if (word.Element is { } element)
                    writer.WriteNumber("element", element.Number);
                writer.WriteString("severity", Words<Severity>.Standard.Of(finding.Severity));
                writer.WriteString("message", finding.Message);
                WriteWord(writer, word.Decision, word.By, word.At);
                writer.Text("reason", word.Reason);
                writer.WriteEndObject();
            }
        }

        writer.WriteEndArray();
        if (preparation.Approval is { } approval)
            WriteApproval(writer, approval);
    }

    private static void WriteApproval(Utf8JsonWriter writer, Approval approval)
    {
        writer.WriteStartObject("approved");
        writer.WriteString("note", approval.Note);
        writer.WriteString("orderNumber", approval.OrderNumber);
        writer.WriteString("sewn", approval.Sewn is null ? "received" : "approvedTape");
        WriteWord(writer, approval.Decision, approval.By, approval.At);
        writer.WriteEndObject();
    }

    private static void WriteWord(Utf8JsonWriter writer, string decision, string by, DateTimeOffset at)
    {
        writer.WriteString("by", by);
        writer.WriteString("at", Json.Time(at));
        writer.WriteString("decision", decision);
    }
}
