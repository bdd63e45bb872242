using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Tests.Webhooks;

/// <summary>A job's row with just what the table asks for.</summary>
internal static class SomeJob
{
    public static JobRow With(string id, string traceparent) => new()
    {
        Shop = ShopScope.Main,
        Id = id,
        Number = 1,
        Status = JobStatus.Finished,
        OrderNumber = "HL-1042",
        Line = "1",
        Location = "front",
        Design = "Crest",
        Quantity = 12,
        Revision = 1,
        Door = Door.Http,
        TapeSha = "",
        StitchesSha = "",
        Technique = "flat",
        TicketReceived = [],
        TicketResolved = [],
        Inputs = [],
        Received = DateTimeOffset.UnixEpoch,
        QueuedAt = DateTimeOffset.UnixEpoch,
        Changed = DateTimeOffset.UnixEpoch,
        Position = 1,
        Traceparent = traceparent,
    };
}
