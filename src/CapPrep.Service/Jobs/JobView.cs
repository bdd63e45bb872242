using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Jobs;

/// <summary>Jobs as answers show them: the rows, with the counts of their deliveries and what was decided on them.</summary>
internal sealed class JobView(AppDb db, JobJson json, DecisionShelf decisions)
{
    /// <summary>One job, whole.</summary>
    public async Task<byte[]> Whole(JobRow job, CancellationToken cancel)
    {
        var counts = await Counts([job.Id], cancel);
        var decided = await decisions.Of(job.Id, cancel);
        return Json.Bytes(writer => json.WriteWhole(writer, job, counts.GetValueOrDefault(job.Id, DeliveryCounts.None), decided));
    }

    /// <summary>One page of a list.</summary>
    /// <param name="cursor">Null: none is given.</param>
    public async Task<byte[]> Page(IReadOnlyList<JobRow> jobs, string? cursor, bool more, CancellationToken cancel)
    {
        var counts = await Counts([.. jobs.Select(job => job.Id)], cancel);
        return Json.Bytes(writer =>
        {
            writer.WriteStartObject();
            writer.WriteStartArray("items");
            foreach (var job in jobs)
                json.WriteItem(writer, job, counts.GetValueOrDefault(job.Id, DeliveryCounts.None));
            writer.WriteEndArray();
            if (cursor is not null)
                writer.WriteString("cursor", cursor);
            writer.WriteBoolean("more", more);
            writer.WriteEndObject();
        });
    }

    private async Task<Dictionary<string, DeliveryCounts>> Counts(string[] ids, CancellationToken cancel)
    {
        var states = await db.Events
            .Where(row => ids.Contains(row.Job))
            .Join(db.Deliveries, row => row.Id, delivery => delivery.Event, (row, delivery) => new { row.Job, delivery.State })
            .GroupBy(pair => pair)
            .Select(group => new { group.Key.Job, group.Key.State, Count = group.Count() })
            .ToArrayAsync(cancel);
        return states.GroupBy(row => row.Job!).ToDictionary(job => job.Key, job => new DeliveryCounts(
            job.Where(row => row.State == DeliveryState.Owed).Sum(row => row.Count),
            job.Where(row => row.State == DeliveryState.Delivered).Sum(row => row.Count),
            job.Where(row => row.State == DeliveryState.GivenUp).Sum(row => row.Count)));
    }
}
