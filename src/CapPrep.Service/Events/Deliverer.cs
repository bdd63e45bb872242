using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Events;

/// <summary>Gives each delivery to the slice that owns its target: an endpoint or a hot folder.</summary>
internal sealed class Deliverer(AppDb db, IEnumerable<ITargetDeliverer> ways) : IDeliverer
{
    public async Task Deliver(string deliveryId, CancellationToken cancel)
    {
        var target = await db.Deliveries.Where(row => row.Id == deliveryId).Select(row => row.Target).SingleOrDefaultAsync(cancel);
        var way = ways.SingleOrDefault(way => target?.StartsWith(way.TargetPrefix, StringComparison.Ordinal) == true);
        if (way is not null)
            await way.Deliver(deliveryId, cancel);
    }
}
