using System.Globalization;

namespace CapPrep.Service.Storage.Rows;

/// <summary>Where a job stands.</summary>
internal enum JobStatus
{
    Queued,
    Working,
    Finished,
    Failed,
}

/// <summary>Which way a job came in.</summary>
internal enum Door
{
    Http,
    Folder,
    Recheck,
}

/// <summary>One tape and ticket from acceptance to its end. Documents are never a property of it.</summary>
internal sealed class JobRow : ShopRow
{
    public required string Id { get; set; }

    /// <summary>The number people use: on cards and in file names, counted per shop.</summary>
    public required long Number { get; set; }

    public required JobStatus Status { get; set; }

    /// <summary>Verdict word; null until finished.</summary>
    public string? Verdict { get; set; }

    public required string OrderNumber { get; set; }

    public required string Line { get; set; }

    /// <summary>Location word, as in the ticket.</summary>
    public required string Location { get; set; }

    public int? OrderLines { get; set; }

    public string? Customer { get; set; }

    /// <summary>Null when the ticket's article number was unknown.</summary>
    public string? CapStyle { get; set; }

    public required string Design { get; set; }

    public required int Quantity { get; set; }

    /// <summary>1, 2, 3 ... within (order, line, location).</summary>
    public required int Revision { get; set; }

    /// <summary>Id of the revision before, and of the one after.</summary>
    public string? Replaces { get; set; }

    public string? ReplacedBy { get; set; }

    public string? RecheckOf { get; set; }

    public required Door Door { get; set; }

    public string? DropId { get; set; }

    public string? FileName { get; set; }

    /// <summary>SHA-256 of the received file, lower-case hex.</summary>
    public required string TapeSha { get; set; }

    /// <summary>SHA-256 over positions and record kinds, header ignored.</summary>
    public required string StitchesSha { get; set; }

    public required string Technique { get; set; }

    public string? Digitizer { get; set; }

    /// <summary>When a Hangfire job was last made for it; null: none since the start.</summary>
    public DateTimeOffset? HandedAt { get; set; }

    /// <summary>Canonical ticket as received.</summary>
    public required byte[] TicketReceived { get; set; }

    public required byte[] TicketResolved { get; set; }

    /// <summary>Pinned inputs as JSON, as the job shows them.</summary>
    public required byte[] Inputs { get; set; }

    /// <summary>What people had decided on these stitches when the job was accepted, as JSON; null: nothing.</summary>
    public byte[]? Bound { get; set; }

    public byte[]? Echo { get; set; }

    public required DateTimeOffset Received { get; set; }

    public required DateTimeOffset QueuedAt { get; set; }

    public DateTimeOffset? Started { get; set; }

    public DateTimeOffset? Finished { get; set; }

    public required DateTimeOffset Changed { get; set; }

    /// <summary>The shop's gapless position of its last visible change.</summary>
    public required long Position { get; set; }

    public int Attempts { get; set; }

    /// <summary>Was in flight beside others when a process died: runs alone next time.</summary>
    public bool Suspect { get; set; }

    public string? LeaseHolder { get; set; }

    public DateTimeOffset? LeaseUntil { get; set; }

    /// <summary>Raised at every claim; a result is stored only under the fence it was claimed with.</summary>
    public long Fence { get; set; }

    /// <summary>Failure object as JSON; only with status failed.</summary>
    public byte[]? Failure { get; set; }

    /// <summary>JSON object of the members a finished job shows: verdictReasons, actors, findings, tapeToSew.</summary>
    public byte[]? Outcome { get; set; }

    public string? Traceparent { get; set; }

    /// <summary>Name of the tape to sew, as machines show it.</summary>
    public string TapeName => Number.ToString(CultureInfo.InvariantCulture) + ".DST";
}
