using System.Net;

namespace CapPrep.Service.Plumbing;

internal enum Role
{
    Api,
    Worker,
    Folder,
}

internal enum DatabaseProvider
{
    Sqlite,
    Postgres,
}

/// <summary>
/// Every setting of the section <c>CapPrep</c>, read and checked once at start by <see cref="SettingsReader"/>.
/// </summary>
internal sealed record Settings
{
    /// <summary>What this process does; default all three.</summary>
    public required IReadOnlyList<Role> Roles { get; init; }

    /// <summary>Where everything this process keeps lies; local file system, writable.</summary>
    public required string DataFolder { get; init; }

    public required DatabaseSettings Database { get; init; }

    public required AccessSettings Access { get; init; }

    /// <summary>File of 32 random bytes in base64 that encrypts the webhook secrets.</summary>
    public required string SecretsKeyFile { get; init; }

    public required HttpSettings Http { get; init; }

    public required UploadSettings Uploads { get; init; }

    /// <summary>Jobs that may wait before new ones are turned away, 1 to 1,000,000; default 10,000.</summary>
    public required int QueueMaxWaiting { get; init; }

    public required WorkerSettings Workers { get; init; }

    public required IReadOnlyList<HotFolderSettings> HotFolders { get; init; }

    public required WebhookSettings Webhooks { get; init; }

    /// <summary>Put in front of the text in the card's code, at most 60 characters; default empty.</summary>
    public required string CardsQrPrefix { get; init; }

    public required RetentionSettings Retention { get; init; }

    public bool Has(Role role) => Roles.Contains(role);
}

/// <param name="ConnectionString">Required for PostgreSQL, refused for SQLite.</param>
/// <param name="MigrateAtStart">Default true.</param>
internal sealed record DatabaseSettings(DatabaseProvider Provider, string? ConnectionString, bool MigrateAtStart);

/// <param name="ManageKey">A key as <c>key new</c> makes it; from <c>ManageKey</c> or <c>ManageKeyFile</c>.</param>
internal sealed record AccessSettings(string? ManageKey);

/// <param name="PublicUrl">Put in front of links; null: links are paths.</param>
/// <param name="ManagementUrl">Listener of dashboard and metrics; null: off.</param>
/// <param name="TrustedProxies">Proxies whose forwarded headers are believed.</param>
/// <param name="MaxWaitSeconds">Longest <c>Prefer: wait</c>, 0 to 60 s; default 20.</param>
/// <param name="MaxWaiting">Requests that may wait at once, 0 to 1,000; default 64.</param>
/// <param name="RequestsPerMinute">Per key, 1 to 100,000; default 600.</param>
internal sealed record HttpSettings(
    Uri? PublicUrl,
    Uri? ManagementUrl,
    IReadOnlyList<IPNetwork> TrustedProxies,
    int MaxWaitSeconds,
    int MaxWaiting,
    int RequestsPerMinute);

/// <param name="MaxTapeBytes">Default 1 MiB, at most 8 MiB.</param>
/// <param name="MaxRecords">Default 200,000, at most 2,000,000.</param>
/// <param name="MaxTicketBytes">Default 64 KiB, at most 256 KiB.</param>
internal sealed record UploadSettings(int MaxTapeBytes, int MaxRecords, int MaxTicketBytes);

/// <param name="Count">Jobs worked at once, 1 to 64; the setting 0 means one per core.</param>
/// <param name="LeaseSeconds">5 to 300 s; default 30. Renewed every third.</param>
/// <param name="MaxAttempts">1 to 10; default 3.</param>
/// <param name="JobTimeoutSeconds">5 to 600 s; default 30.</param>
internal sealed record WorkerSettings(int Count, int LeaseSeconds, int MaxAttempts, int JobTimeoutSeconds);

/// <param name="Root">Absolute; all its subfolders on one file system.</param>
/// <param name="Shop">Whose folder it is; default <c>main</c>.</param>
/// <param name="QuietSeconds">How long a file must stay unchanged, 1 to 600 s; default 2.</param>
/// <param name="ScanSeconds">1 to 600 s; default 2.</param>
/// <param name="PatienceMinutes">How long half a pair may wait, 1 to 1,440 min; default 10.</param>
/// <param name="KeepDays">0 (never delete) to 3,650; default 30.</param>
internal sealed record HotFolderSettings(
    string Root,
    string Shop,
    int QuietSeconds,
    int ScanSeconds,
    int PatienceMinutes,
    int KeepDays);

/// <param name="AllowedNetworks">Receivers inside the shop's network that may be called, also by plain http.</param>
/// <param name="Concurrency">Deliveries under way at once, 1 to 128; default 16.</param>
/// <param name="PerEndpoint">Of them to one endpoint, 1 to 16; default 4.</param>
/// <param name="TimeoutSeconds">Headers and body together, 1 to 30 s; default 20.</param>
/// <param name="WaitsSeconds">Waits before attempts 1 to n; 1 to 20 entries of 0 to 86,400 s.</param>
/// <param name="SwitchOffAfterHours">24 to 720 h of failures only; default 120.</param>
internal sealed record WebhookSettings(
    IReadOnlyList<AllowedNetwork> AllowedNetworks,
    int Concurrency,
    int PerEndpoint,
    int TimeoutSeconds,
    IReadOnlyList<int> WaitsSeconds,
    int SwitchOffAfterHours);

/// <summary>A network, or one address, with or without a port, that the operator allows as a receiver.</summary>
/// <param name="Port">Null: any port.</param>
internal sealed record AllowedNetwork(IPNetwork Network, int? Port)
{
    public bool Admits(IPAddress address, int port) =>
        Network.Contains(address) && (Port is null || Port == port);
}

/// <summary>Days things are kept, 1 to 3,650 each; events at least 7.</summary>
internal sealed record RetentionSettings(int JobDays, int PictureDays, int TapeDays, int EventDays, int AttemptDays);
