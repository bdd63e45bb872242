namespace CapPrep.Service.Storage.Rows;

internal enum DropState
{
    Waiting,
    Taken,
    Answered,
    Returned,
}

/// <summary>What was met in a hot folder and how far it has come.</summary>
internal sealed class DropRow : ShopRow
{
    public required string Id { get; set; }

    public required string Root { get; set; }

    public required string Name { get; set; }

    public required DropState State { get; set; }

    /// <summary>Last step that was done, a word.</summary>
    public required string Step { get; set; }

    public string? TapeSha { get; set; }

    public string? TicketSha { get; set; }

    public string? Job { get; set; }

    public int Tries { get; set; }

    /// <summary>When the keeper noted it.</summary>
    public required DateTimeOffset Seen { get; set; }

    /// <summary>When it was answered or returned.</summary>
    public DateTimeOffset? Ended { get; set; }

    /// <summary>What was dropped, names and sizes, as a JSON array.</summary>
    public required byte[] Files { get; set; }

    /// <summary>Problem document of a drop that is returned.</summary>
    public byte[]? Problem { get; set; }
}

/// <summary>Measurements of sewn caps, as sent.</summary>
internal sealed class SewOutRow : ShopRow
{
    public required string Id { get; set; }

    public required string Job { get; set; }

    public required string Station { get; set; }

    public required DateTimeOffset At { get; set; }

    public required byte[] Body { get; set; }
}
