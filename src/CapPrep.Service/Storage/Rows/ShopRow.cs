namespace CapPrep.Service.Storage.Rows;

/// <summary>Every row belongs to a shop; the shop is the first column of its keys.</summary>
internal abstract class ShopRow
{
    public required string Shop { get; set; }
}

/// <summary>A shop. It comes into being when a key is made for it.</summary>
internal sealed class ShopEntry : ShopRow
{
    public required string Name { get; set; }
}

/// <summary>A number that is handed out in commit order: <c>number</c>, <c>position</c>, <c>seq:job.finished</c> ...</summary>
internal sealed class CounterRow : ShopRow
{
    public required string Name { get; set; }

    public required long Value { get; set; }
}

/// <summary>Something only one process may do at a time.</summary>
internal sealed class LeaseRow : ShopRow
{
    public required string Name { get; set; }

    public required string Holder { get; set; }

    public required DateTimeOffset Until { get; set; }

    public required long Fence { get; set; }
}

/// <summary>A request that was answered, so that its repetition gets the same job.</summary>
internal sealed class IdempotencyRow : ShopRow
{
    public required string Key { get; set; }

    /// <summary>Fingerprint of the request, lower-case hex.</summary>
    public required string Print { get; set; }

    public required string Job { get; set; }

    public required string Route { get; set; }

    /// <summary>Id of what was made of the job, where it was not the job itself.</summary>
    public string? Made { get; set; }

    public DateTimeOffset Expires { get; set; }
}

/// <summary>An API key; the key itself is not stored.</summary>
internal sealed class KeyRow : ShopRow
{
    public required string Id { get; set; }

    public required string Name { get; set; }

    /// <summary>SHA-256 of the key, lower-case hex.</summary>
    public required string Hash { get; set; }

    /// <summary>The part that may be shown.</summary>
    public required string Start { get; set; }

    /// <summary>Scope words with commas between, sorted.</summary>
    public required string Scopes { get; set; }

    public required DateTimeOffset Created { get; set; }

    public DateTimeOffset? Expires { get; set; }

    public DateTimeOffset? Ended { get; set; }

    public DateTimeOffset? LastUsed { get; set; }
}

/// <summary>Who changed what.</summary>
internal sealed class AuditRow : ShopRow
{
    public required string Id { get; set; }

    public required DateTimeOffset At { get; set; }

    /// <summary>Id of the key, or <c>service</c>.</summary>
    public required string Key { get; set; }

    public required string Action { get; set; }

    public required string Kind { get; set; }

    public required string Target { get; set; }

    public int? Version { get; set; }

    public string? BeforeSha { get; set; }

    public string? AfterSha { get; set; }
}

/// <summary>One version of one catalog resource or rule book. Rows are added, never changed.</summary>
internal sealed class CatalogRow : ShopRow
{
    /// <summary>A word of <c>CatalogKinds</c>.</summary>
    public required string Kind { get; set; }

    public required string Id { get; set; }

    public required int Version { get; set; }

    /// <summary>The body as it was PUT.</summary>
    public required byte[] Body { get; set; }

    public required string Sha256 { get; set; }

    public required DateTimeOffset At { get; set; }

    /// <summary>Name of the key, or <c>starter</c>.</summary>
    public required string By { get; set; }

    /// <summary>This version takes the resource out of use.</summary>
    public bool Retired { get; set; }
}
