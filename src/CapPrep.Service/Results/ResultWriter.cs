using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Results;

/// <summary>What the result document says of the job around the preparation.</summary>
/// <param name="Inputs">Pinned inputs as JSON; null where a tape was checked without a catalog of versions.</param>
/// <param name="TapeSha">SHA-256 of the received file.</param>
internal sealed record ResultFrame(ResultJob? Job, byte[]? Inputs, byte[]? Echo, int TapeBytes, string TapeSha)
{
    /// <summary>Name of the tape to sew.</summary>
    public required string TapeName { get; init; }

    public required string CardSheetSha { get; init; }

    public required string ProofSheetSha { get; init; }
}

internal sealed record ResultJob(string Id, long Number, int Revision, DateTimeOffset Received);

/// <summary>Writes the result document. <c>schema</c> rises when a member changes its meaning.</summary>
internal static class ResultWriter
{
    public const int Schema = 1;

    public static byte[] Write(Preparation preparation, ResultFrame frame) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteNumber("schema", Schema);
        WriteJob(writer, frame.Job);
        WriteVerdict(writer, preparation);
        WriteSummary(writer, preparation.Summary);
        WriteFirstCap(writer, preparation.FirstCap);
        if (preparation.Advice is { } advice)
            writer.WriteString("advice", Words<Advice>.Standard.Of(advice));
        ReadingJson.Write(writer, preparation);
        AcceptedJson.Write(writer, preparation);
        if (preparation.Revision is { } revision)
            RevisionJson.Write(writer, revision);
        WriteRaw(writer, "echo", frame.Echo);
        WriteRaw(writer, "inputs", frame.Inputs);
        writer.WritePropertyName("ticket");
        ResolvedTicketWriter.Write(writer, preparation.Ticket);
        WriteTape(writer, preparation, frame);
        if (preparation.Seating is { } seating)
            WriteSeating(writer, seating);
        writer.WriteStartArray("findings");
        foreach (var finding in preparation.Findings)
            FindingJson.Write(writer, finding);
        writer.WriteEndArray();
        BriefJson.Write(writer, preparation.Brief);
        if (preparation.WaysOut is { } ways)
            WaysOutJson.Write(writer, ways);
        SewOrderJson.Write(writer, preparation);
        if (preparation.LossCheck is { } lossCheck)
            LossCheckJson.Write(writer, lossCheck);
        if (preparation.TapeToSew is { } tape)
            WriteTapeToSew(writer, tape, frame.TapeName);
        WriteNeedlePlan(writer, preparation);
        ShiftJson.Write(writer, preparation.Shift);
        writer.WriteStartObject("drawings");
        writer.WriteString("cardSheetSha256", frame.CardSheetSha);
        writer.WriteString("proofSheetSha256", frame.ProofSheetSha);
        writer.WriteEndObject();
        writer.WriteEndObject();
    });

    /// <summary>The members that the job itself shows of its result.</summary>
    public static byte[] Outcome(Preparation preparation) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        WriteReasons(writer, preparation.VerdictReasons);
        WriteActors(writer, preparation.Actors);
        writer.WriteStartObject("findings");
        foreach (var severity in new[] { Severity.Hold, Severity.Warn, Severity.Note })
            writer.WriteNumber(Words<Severity>.Standard.Of(severity), preparation.Findings.Count(finding => finding.Severity == severity && finding.State != FindingState.Solved));
        writer.WriteNumber("solved", preparation.Findings.Count(finding => finding.State == FindingState.Solved));
        if (preparation.Accepted.Count > 0)
            writer.WriteNumber("accepted", preparation.Accepted.Count);
        writer.WriteEndObject();
        if (preparation.TapeToSew is { } tape)
        {
            writer.WriteStartObject("tapeToSew");
            writer.WriteString("sha256", DocumentStore.Sha(tape.Bytes));
            WriteChanges(writer, tape);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    });

    private static void WriteJob(Utf8JsonWriter writer, ResultJob? job)
    {
        if (job is null)
            return;
        writer.WriteStartObject("job");
        writer.WriteString("id", job.Id);
        writer.WriteNumber("number", job.Number);
        writer.WriteNumber("revision", job.Revision);
        writer.WriteString("received", Json.Time(job.Received));
        writer.WriteEndObject();
    }

    private static void WriteVerdict(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteString("verdict", Words<Verdict>.Standard.Of(preparation.Verdict));
        WriteReasons(writer, preparation.VerdictReasons);
        WriteActors(writer, preparation.Actors);
    }

    private static void WriteReasons(Utf8JsonWriter writer, IReadOnlyList<VerdictReason> reasons)
    {
        writer.WriteStartArray("verdictReasons");
        foreach (var reason in reasons)
        {
            writer.WriteStartObject();
            writer.WriteString("rule", reason.Rule);
            writer.WriteNumber("finding", reason.Finding);
            writer.WriteString("message", reason.Message);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteActors(Utf8JsonWriter writer, IReadOnlyList<Actor> actors)
    {
        writer.WriteStartArray("actors");
        foreach (var actor in actors)
            writer.WriteStringValue(Words<Actor>.Standard.Of(actor));
        writer.WriteEndArray();
    }

    private static void WriteSummary(Utf8JsonWriter writer, Summary summary)
    {
        writer.WriteStartObject("summary");
        writer.WriteString("lead", summary.Lead);
        writer.Text("digitizer", summary.Digitizer);
        writer.Text("framing", summary.Framing);
        writer.Text("operator", summary.Operator);
        writer.Text("orderDesk", summary.OrderDesk);
        writer.WriteEndObject();
    }

    private static void WriteFirstCap(Utf8JsonWriter writer, FirstCap firstCap)
    {
        writer.WriteStartObject("firstCap");
        writer.WriteString("is", Words<FirstCapIs>.Standard.Of(firstCap.Is));
        writer.WriteStartArray("because");
        foreach (var reason in firstCap.Because)
            writer.WriteStringValue(reason);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteTape(Utf8JsonWriter writer, Preparation preparation, ResultFrame frame)
    {
        var facts = preparation.Facts;
        writer.WriteStartObject("tape");
        writer.WriteNumber("bytes", frame.TapeBytes);
        writer.WriteString("sha256", frame.TapeSha);
        writer.WriteNumber("stitches", facts.Stitches);
        writer.WriteNumber("jumps", facts.Jumps);
        writer.WriteNumber("trims", facts.Trims);
        writer.WriteNumber("colorStops", facts.ColorStops);
        writer.WriteNumber("blocks", facts.Blocks);
        writer.WriteNumber("strands", facts.Strands);
        writer.WriteNumber("pieces", preparation.Reading.Pieces.Count);
        writer.WriteNumber("elements", preparation.Reading.Elements.Count);
        writer.Mm("widthMm", facts.Extents.Width / 10.0);
        writer.Mm("heightMm", facts.Extents.Height / 10.0);
        writer.Box("extentsMm", facts.Extents.ToMillimeters());
        TextLineJson.Write(writer, preparation);
        writer.WriteEndObject();
    }

    private static void WriteSeating(Utf8JsonWriter writer, SeatedDesign seating)
    {
        writer.WriteStartObject("seating");
        writer.WriteString("by", Words<SeatingBase>.Standard.Of(seating.By));
        writer.WriteString("centerBy", Words<SeatingCenter>.Standard.Of(seating.CenterBy));
        writer.Box("boxMm", seating.Box.ToMillimeters());
        writer.Point("originMm", seating.Origin);
        writer.Point("keyInMm", seating.KeyIn);
        writer.WriteStartObject("clearancesMm");
        writer.Mm("brim", seating.ClearancesMm.Brim);
        writer.Mm("top", seating.ClearancesMm.Top);
        writer.Mm("left", seating.ClearancesMm.Left);
        writer.Mm("right", seating.ClearancesMm.Right);
        writer.WriteEndObject();
        writer.Share("largestScale", seating.LargestScale);
        writer.WriteEndObject();
    }

    private static void WriteTapeToSew(Utf8JsonWriter writer, TapeToSew tape, string name)
    {
        writer.WriteStartObject("tapeToSew");
        writer.WriteString("sha256", DocumentStore.Sha(tape.Bytes));
        writer.WriteString("name", name);
        writer.WriteNumber("bytes", tape.Bytes.Length);
        writer.WriteBoolean("stitchesEqual", tape.StitchesEqual);
        WriteChanges(writer, tape);
        writer.Point("originShiftMm", tape.OriginShift);
        writer.WriteEndObject();
    }

    private static void WriteChanges(Utf8JsonWriter writer, TapeToSew tape)
    {
        writer.WriteStartArray("changes");
        foreach (var change in tape.Changes)
            writer.WriteStringValue(Words<TapeChange>.Standard.Of(change));
        writer.WriteEndArray();
    }

    private static void WriteNeedlePlan(Utf8JsonWriter writer, Preparation preparation)
    {
        writer.WriteStartArray("needlePlan");
        foreach (var step in preparation.NeedlePlan)
            WriteStep(writer, step);
        writer.WriteEndArray();
    }

    private static void WriteStep(Utf8JsonWriter writer, NeedleStep step)
    {
        writer.WriteStartObject();
        writer.WriteNumber("step", step.Step);
        writer.WriteNumber("block", step.Block);
        if (step.Needle is { } needle)
            writer.WriteNumber("needle", needle);
        if (step.Thread is { } thread)
        {
            writer.WriteStartObject("thread");
            writer.Text("name", thread.Name);
            writer.Text("color", thread.Color);
            writer.Text("code", thread.Code);
            writer.WriteEndObject();
        }

        writer.WriteNumber("stitches", step.Stitches);
        writer.WriteBoolean("returns", step.Returns);
        writer.Numbers("elements", step.Elements.Select(element => element + 1));
        writer.WriteString("action", Words<StopAction>.Standard.Of(step.Action));
        writer.WriteEndObject();
    }

    private static void WriteRaw(Utf8JsonWriter writer, string name, byte[]? json)
    {
        if (json is null)
            return;
        writer.WritePropertyName(name);
        writer.WriteRawValue(json);
    }
}
