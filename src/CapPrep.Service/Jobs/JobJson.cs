using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Jobs;

/// <summary>How far the deliveries of a job's events have come.</summary>
internal sealed record DeliveryCounts(int Owed, int Delivered, int GivenUp)
{
    public static readonly DeliveryCounts None = new(0, 0, 0);
}

/// <summary>
/// Writes a job in its three forms: whole, as an item of a list (without ticket and decisions), and frozen into an event
/// (without what changes after its commit). What the job shows of its result stands ready in the row.
/// </summary>
internal sealed class JobJson(Links links)
{
    public void WriteWhole(Utf8JsonWriter writer, JobRow job, DeliveryCounts deliveries, IReadOnlyList<DecisionRow> decided)
    {
        using var shown = Shown.Of(job);
        writer.WriteStartObject();
        WriteHead(writer, job, shown, int.MaxValue);
        writer.WriteNumber("attempts", job.Attempts);
        WriteInputs(writer, job, shown);
        WriteDeliveries(writer, deliveries);
        DecisionJson.WriteAll(writer, decided);
        WriteRaw(writer, "ticket", job.TicketResolved);
        WriteTail(writer, job, shown);
        writer.WriteEndObject();
    }

    public void WriteItem(Utf8JsonWriter writer, JobRow job, DeliveryCounts deliveries)
    {
        using var shown = Shown.Of(job);
        writer.WriteStartObject();
        WriteHead(writer, job, shown, int.MaxValue);
        writer.WriteNumber("attempts", job.Attempts);
        WriteInputs(writer, job, shown);
        WriteDeliveries(writer, deliveries);
        WriteTail(writer, job, shown);
        writer.WriteEndObject();
    }

    /// <param name="mostReasons">Verdict reasons beyond this number are left out.</param>
    public void WriteEvent(Utf8JsonWriter writer, JobRow job, int mostReasons)
    {
        using var shown = Shown.Of(job);
        writer.WriteStartObject();
        WriteHead(writer, job, shown, mostReasons);
        WriteInputs(writer, job, shown);
        WriteTail(writer, job, shown);
        writer.WriteEndObject();
    }

    private static void WriteHead(Utf8JsonWriter writer, JobRow job, Shown shown, int mostReasons)
    {
        writer.WriteString("id", job.Id);
        writer.WriteNumber("number", job.Number);
        writer.WriteString("status", Words<JobStatus>.Standard.Of(job.Status));
        WriteText(writer, "verdict", job.Verdict);
        shown.WriteReasons(writer, mostReasons);
        shown.Write(writer, "actors");
        shown.Write(writer, "findings");
        WriteOrder(writer, job);
        WriteHistory(writer, job);
    }

    private static void WriteOrder(Utf8JsonWriter writer, JobRow job)
    {
        writer.WriteString("orderNumber", job.OrderNumber);
        writer.WriteString("line", job.Line);
        writer.WriteString("location", job.Location);
        WriteText(writer, "customer", job.Customer);
        writer.WriteString("design", job.Design);
        writer.WriteNumber("quantity", job.Quantity);
    }

    private static void WriteHistory(Utf8JsonWriter writer, JobRow job)
    {
        writer.WriteNumber("revision", job.Revision);
        WriteText(writer, "replaces", job.Replaces);
        WriteText(writer, "replacedBy", job.ReplacedBy);
        WriteText(writer, "recheckOf", job.RecheckOf);
        writer.WriteBoolean("latest", job.ReplacedBy is null);
        writer.WriteString("door", Words<Door>.Standard.Of(job.Door));
        WriteText(writer, "drop", job.DropId);
        WriteText(writer, "fileName", job.FileName);
        writer.WriteString("received", Json.Time(job.Received));
        WriteTime(writer, "started", job.Started);
        if (job.Status == JobStatus.Finished)
            WriteTime(writer, "finished", job.Finished);
        writer.WriteString("changed", Json.Time(job.Changed));
    }

    private static void WriteInputs(Utf8JsonWriter writer, JobRow job, Shown shown)
    {
        WriteRaw(writer, "inputs", job.Inputs);
        shown.Write(writer, "tapeToSew");
        WriteRaw(writer, "failure", job.Failure);
    }

    private static void WriteDeliveries(Utf8JsonWriter writer, DeliveryCounts deliveries)
    {
        writer.WriteStartObject("deliveries");
        writer.WriteNumber("owed", deliveries.Owed);
        writer.WriteNumber("delivered", deliveries.Delivered);
        writer.WriteNumber("givenUp", deliveries.GivenUp);
        writer.WriteEndObject();
    }

    private void WriteTail(Utf8JsonWriter writer, JobRow job, Shown shown)
    {
        WriteRaw(writer, "echo", job.Echo);
        writer.WriteStartObject("links");
        writer.WriteString("self", links.Job(job.Id));
        if (job.Status == JobStatus.Finished)
        {
            writer.WriteString("result", links.Result(job.Id));
            writer.WriteString("card", links.Card(job.Id));
            writer.WriteString("proof", links.Proof(job.Id));
        }

        if (shown.Has("tapeToSew"))
            writer.WriteString("tape", links.Tape(job.Id));
        writer.WriteString("receivedTape", links.ReceivedTape(job.Id));
        writer.WriteString("order", links.Order(job.OrderNumber));
        writer.WriteEndObject();
    }

    private static void WriteText(Utf8JsonWriter writer, string name, string? text)
    {
        if (text is not null)
            writer.WriteString(name, text);
    }

    private static void WriteTime(Utf8JsonWriter writer, string name, DateTimeOffset? time)
    {
        if (time is { } at)
            writer.WriteString(name, Json.Time(at));
    }

    private static void WriteRaw(Utf8JsonWriter writer, string name, byte[]? json)
    {
        if (json is null)
            return;
        writer.WritePropertyName(name);
        writer.WriteRawValue(json);
    }

    /// <summary>The members that the end of a job left for showing.</summary>
    private sealed class Shown(JsonDocument? outcome) : IDisposable
    {
        public static Shown Of(JobRow job) => new(job.Outcome is null ? null : JsonDocument.Parse(job.Outcome));

        public bool Has(string name) => outcome?.RootElement.TryGetProperty(name, out _) == true;

        public void Write(Utf8JsonWriter writer, string name)
        {
            if (outcome?.RootElement.TryGetProperty(name, out var value) != true)
                return;
            writer.WritePropertyName(name);
            value.WriteTo(writer);
        }

        public void WriteReasons(Utf8JsonWriter writer, int most)
        {
            if (outcome?.RootElement.TryGetProperty("verdictReasons", out var reasons) != true)
                return;
            writer.WriteStartArray("verdictReasons");
            foreach (var reason in reasons.EnumerateArray().Take(most))
                reason.WriteTo(writer);
            writer.WriteEndArray();
        }

        public void Dispose() => outcome?.Dispose();
    }
}
