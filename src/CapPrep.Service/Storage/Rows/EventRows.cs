namespace CapPrep.Service.Storage.Rows;

/// <summary>Something that happened, with the bytes every receiver gets.</summary>
internal sealed class EventRow : ShopRow
{
    public required string Id { get; set; }

    /// <summary>Gapless in the shop, in commit order, shared with job changes.</summary>
    public required long Position { get; set; }

    public required string Type { get; set; }

    /// <summary>Gapless per shop and type; null for test events.</summary>
    public long? Sequence { get; set; }

    public string? PreviousId { get; set; }

    public string? Job { get; set; }

    /// <summary>Frozen body.</summary>
    public required byte[] Body { get; set; }

    public required DateTimeOffset At { get; set; }
}

internal enum EndpointState
{
    On,
    Paused,
    Off,
    SwitchedOff,
}

/// <summary>A receiver of webhooks.</summary>
internal sealed class EndpointRow : ShopRow
{
    public required string Id { get; set; }

    public required string Url { get; set; }

    /// <summary>Event types with commas between, sorted.</summary>
    public required string Types { get; set; }

    public string? Note { get; set; }

    public required EndpointState State { get; set; }

    /// <summary>Secrets with their times as JSON, encrypted.</summary>
    public required byte[] Secrets { get; set; }

    public DateTimeOffset? PausedUntil { get; set; }

    public DateTimeOffset? FailingSince { get; set; }

    /// <summary>Per cent of the switch-off budget already warned of.</summary>
    public int Warned { get; set; }

    public required DateTimeOffset Created { get; set; }
}

internal enum DeliveryState
{
    Owed,
    Delivered,
    GivenUp,
}

/// <summary>An event owed to one target: a webhook endpoint or a drop's answer folder.</summary>
internal sealed class DeliveryRow : ShopRow
{
    public required string Id { get; set; }

    public required string Event { get; set; }

    /// <summary>Id of the endpoint (<c>whk_</c>) or the drop (<c>drp_</c>).</summary>
    public required string Target { get; set; }

    public required DeliveryState State { get; set; }

    /// <summary>Attempts made since it was owed or last resent.</summary>
    public int Attempts { get; set; }

    /// <summary>When the next attempt is due; null when none is.</summary>
    public DateTimeOffset? NextAt { get; set; }

    public string? LeaseHolder { get; set; }

    public DateTimeOffset? LeaseUntil { get; set; }

    public long Fence { get; set; }
}

/// <summary>One call of one delivery.</summary>
internal sealed class AttemptRow : ShopRow
{
    public required string Delivery { get; set; }

    /// <summary>From 1, over all resends.</summary>
    public required int Number { get; set; }

    public required DateTimeOffset At { get; set; }

    /// <summary>Address and port connected to; null when none was.</summary>
    public string? Address { get; set; }

    public string? Tls { get; set; }

    /// <summary>Milliseconds of dns, connect, tls, firstByte and total as JSON.</summary>
    public required byte[] Phases { get; set; }

    public int? Status { get; set; }

    /// <summary>Outcome word.</summary>
    public required string Outcome { get; set; }

    /// <summary>Beginning of the answer's body, at most 2 KiB.</summary>
    public string? Excerpt { get; set; }
}
