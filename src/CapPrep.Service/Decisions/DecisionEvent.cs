using CapPrep.Service.Jobs;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Decisions;

/// <summary>What receivers are told of a decision.</summary>
internal sealed class DecisionEvent(Links links)
{
    public byte[] Data(JobRow job, IReadOnlyList<DecisionRow> points) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("id", job.Id);
        writer.WriteNumber("number", job.Number);
        writer.WriteString("verdict", job.Verdict);
        writer.WriteString("orderNumber", job.OrderNumber);
        writer.WriteString("line", job.Line);
        writer.WriteString("location", job.Location);
        if (job.Customer is not null)
            writer.WriteString("customer", job.Customer);
        writer.WriteString("design", job.Design);
        writer.WriteNumber("revision", job.Revision);
        writer.WritePropertyName("decision");
        DecisionJson.Write(writer, points);
        if (job.Echo is not null)
        {
            writer.WritePropertyName("echo");
            writer.WriteRawValue(job.Echo);
        }

        writer.WriteStartObject("links");
        writer.WriteString("self", links.Job(job.Id));
        writer.WriteString("result", links.Result(job.Id));
        writer.WriteEndObject();
        writer.WriteEndObject();
    });
}
