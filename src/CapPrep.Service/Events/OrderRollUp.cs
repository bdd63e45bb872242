using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Events;

/// <summary>One line of an order as it stands.</summary>
internal sealed record OrderLine(string Id, long Number, string Line, string Location, JobStatus Status, string? Verdict);

/// <summary>An order that has come together.</summary>
/// <param name="Lines">Latest revisions, by number.</param>
internal sealed record WholeOrder(string OrderNumber, string? Customer, int OrderLines, IReadOnlyList<OrderLine> Lines);

/// <summary>Looks at an order over its lines, each at its latest revision.</summary>
internal sealed class OrderRollUp(AppDb db, Links links)
{
    /// <summary>Lines listed in an event; the rest is counted, to keep the body within its size.</summary>
    private const int MostListed = 90;

    /// <summary>Whose turn it is comes first; the verdict of an order is the first that one of its lines has.</summary>
    private static readonly Verdict[] Heaviest =
        [Verdict.ReturnToOrderDesk, Verdict.ReturnToDigitizer, Verdict.SewResequenced, Verdict.SewAsReceived];

    /// <summary>The order when this job was its last open line; null when it was not or nobody said how many there are.</summary>
    public async Task<WholeOrder?> FinishedBy(JobRow job, CancellationToken cancel)
    {
        if (job.OrderLines is not { } wanted || job.ReplacedBy is not null)
            return null;
        var lines = await db.Jobs.AsNoTracking()
            .Where(row => row.Shop == job.Shop && row.OrderNumber == job.OrderNumber && row.ReplacedBy == null)
            .OrderBy(row => row.Number)
            .Select(row => new OrderLine(row.Id, row.Number, row.Line, row.Location, row.Status, row.Verdict))
            .ToArrayAsync(cancel);
        return lines.Length >= wanted && !lines.Any(IsOpen)
            ? new WholeOrder(job.OrderNumber, job.Customer, wanted, lines)
            : null;
    }

    public byte[] Data(WholeOrder order, long revision) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("orderNumber", order.OrderNumber);
        if (order.Customer is not null)
            writer.WriteString("customer", order.Customer);
        writer.WriteNumber("orderLines", order.OrderLines);
        writer.WriteNumber("revision", revision);
        writer.WriteString("status", "finished");
        if (VerdictOf(order) is { } verdict)
            writer.WriteString("verdict", verdict);
        WriteCounts(writer, order.Lines);
        WriteLines(writer, order.Lines);
        writer.WriteStartObject("links");
        writer.WriteString("order", links.Order(order.OrderNumber));
        writer.WriteEndObject();
        writer.WriteEndObject();
    });

    private static bool IsOpen(OrderLine line) => line.Status is JobStatus.Queued or JobStatus.Working;

    private static string? VerdictOf(WholeOrder order) => Heaviest
        .Select(Words<Verdict>.Standard.Of)
        .FirstOrDefault(word => order.Lines.Any(line => line.Verdict == word));

    private static void WriteCounts(Utf8JsonWriter writer, IReadOnlyList<OrderLine> lines)
    {
        writer.WriteStartObject("counts");
        foreach (var word in Words<Verdict>.Standard.All)
            writer.WriteNumber(word, lines.Count(line => line.Verdict == word));
        writer.WriteNumber("failed", lines.Count(line => line.Status == JobStatus.Failed));
        writer.WriteNumber("open", lines.Count(IsOpen));
        writer.WriteEndObject();
    }

    private static void WriteLines(Utf8JsonWriter writer, IReadOnlyList<OrderLine> lines)
    {
        writer.WriteStartArray("jobs");
        foreach (var line in lines.Take(MostListed))
        {
            writer.WriteStartObject();
            writer.WriteString("id", line.Id);
            writer.WriteNumber("number", line.Number);
            writer.WriteString("line", line.Line);
            writer.WriteString("location", line.Location);
            writer.WriteString("status", Words<JobStatus>.Standard.Of(line.Status));
            if (line.Verdict is not null)
                writer.WriteString("verdict", line.Verdict);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        if (lines.Count > MostListed)
            writer.WriteNumber("jobsLeftOut", lines.Count - MostListed);
    }
}
