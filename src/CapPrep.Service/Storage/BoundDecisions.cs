using System.Text.Json;
using CapPrep.Engine.Approvals;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Storage;

/// <summary>What people had decided on a job's stitches when it was accepted, as stored with the job.</summary>
/// <param name="Approval">Without its tape, which is a document of the job; null: no sample was approved.</param>
/// <param name="Sample">How the approved tape belongs to the received one; null: the received order was approved.</param>
/// <param name="IsFresh">Approved on this machine within 12 months.</param>
internal sealed record BoundDecisions(IReadOnlyList<Acceptance> Acceptances, Approval? Approval, BoundSample? Sample, bool IsFresh)
{
    public static readonly BoundDecisions None = new([], null, null, IsFresh: false);

    /// <summary>The approved order is another than that of these stitches.</summary>
    public static bool NeedsTape(DecisionRow approval, string stitchesSha) =>
        approval.Seen is not null && approval.ReceivedStitchesSha == stitchesSha && approval.SewnStitchesSha != stitchesSha;

    public static byte[] Bytes(IReadOnlyList<DecisionRow> accepted, DecisionRow? approval, bool isFresh, string stitchesSha) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteStartArray("accepted");
        foreach (var row in accepted)
            WriteAccepted(writer, row);
        writer.WriteEndArray();
        if (approval is not null)
        {
            writer.WriteStartObject("approval");
            WriteSaid(writer, approval);
            writer.WriteString("orderNumber", approval.OrderNumber);
            writer.WriteBoolean("fresh", isFresh);
            if (NeedsTape(approval, stitchesSha))
                WriteRaw(writer, "sample", approval.Seen!);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    });

    /// <summary>Reads what <see cref="Bytes"/> wrote; null: nothing was decided.</summary>
    public static BoundDecisions Read(byte[]? utf8)
    {
        if (utf8 is null)
            return None;
        using var document = JsonDocument.Parse(utf8);
        var root = document.RootElement;
        Acceptance[] accepted = [.. root.GetProperty("accepted").EnumerateArray().Select(AcceptedOf)];
        if (!root.TryGetProperty("approval", out var approval))
            return new(accepted, null, null, IsFresh: false);
        return new(
            accepted,
            new Approval { Decision = Text(approval, "decision")!, By = Text(approval, "by")!, At = Time(approval), OrderNumber = Text(approval, "orderNumber")! },
            approval.TryGetProperty("sample", out var sample) ? SampleOf(sample) : null,
            approval.GetProperty("fresh").GetBoolean());
    }

    private static void WriteAccepted(Utf8JsonWriter writer, DecisionRow row)
    {
        writer.WriteStartObject();
        WriteSaid(writer, row);
        writer.WriteString("rule", row.Rule);
        if (row.Element is { } element)
            writer.WriteNumber("element", element);
        WriteRaw(writer, "seen", row.Seen!);
        writer.WriteEndObject();
    }

    private static void WriteSaid(Utf8JsonWriter writer, DecisionRow row)
    {
        writer.WriteString("decision", row.Said);
        writer.WriteString("by", row.By);
        if (row.Reason is not null)
            writer.WriteString("reason", row.Reason);
        writer.WriteNumber("at", row.At.ToUnixTimeMilliseconds());
    }

    private static void WriteRaw(Utf8JsonWriter writer, string name, byte[] json)
    {
        writer.WritePropertyName(name);
        writer.WriteRawValue(json);
    }

    private static Acceptance AcceptedOf(JsonElement one)
    {
        var seen = one.GetProperty("seen");
        return new Acceptance
        {
            Decision = Text(one, "decision")!,
            Rule = Text(one, "rule")!,
            Element = one.TryGetProperty("element", out var element)
                ? new AcceptedElement(element.GetInt32(), new StitchRange(seen.GetProperty("first").GetInt32(), seen.GetProperty("last").GetInt32()))
                : null,
            Seen = new SeenFinding(
                Words<Severity>.Standard.TryParse(Text(seen, "severity")!, out var severity) ? severity : Severity.Hold,
                Number(seen, "value"),
                Number(seen, "measured"),
                Text(seen, "message")!),
            By = Text(one, "by")!,
            Reason = Text(one, "reason"),
            At = Time(one),
        };
    }

    private static BoundSample SampleOf(JsonElement sample) => new(
        sample.GetProperty("turned").GetBoolean(),
        new TapePoint(sample.GetProperty("start").GetProperty("x").GetInt32(), sample.GetProperty("start").GetProperty("y").GetInt32()),
        [.. sample.GetProperty("order").EnumerateArray().Select(number => number.GetInt32())],
        [.. sample.GetProperty("blocks").EnumerateArray().Select(number => number.GetInt32())]);

    private static string? Text(JsonElement owner, string name) => owner.TryGetProperty(name, out var text) ? text.GetString() : null;

    private static double? Number(JsonElement owner, string name) => owner.TryGetProperty(name, out var number) ? number.GetDouble() : null;

    private static DateTimeOffset Time(JsonElement owner) => DateTimeOffset.FromUnixTimeMilliseconds(owner.GetProperty("at").GetInt64());
}

/// <summary>How an approved tape belongs to the received one; as <see cref="ApprovedTape"/>.</summary>
internal sealed record BoundSample(bool IsTurned, TapePoint Start, IReadOnlyList<int> Order, IReadOnlyList<int> Blocks);
