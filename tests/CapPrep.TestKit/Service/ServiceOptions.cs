using Microsoft.Extensions.DependencyInjection;

namespace CapPrep.TestKit.Service;

/// <summary>Where the service under test keeps its tables.</summary>
public enum Store
{
    Sqlite,
    Postgres,
}

/// <summary>How one service under test differs from the usual one.</summary>
public sealed record ServiceOptions
{
    public Store Store { get; init; } = Store.Sqlite;

    /// <summary>Settings by name without the section, such as <c>Queue:MaxWaiting</c>; they win over the kit's own.</summary>
    public IReadOnlyDictionary<string, string?> Settings { get; init; } = new Dictionary<string, string?>();

    /// <summary>Null: the system's clock.</summary>
    public TimeProvider? Clock { get; init; }

    /// <summary>Replaces further services.</summary>
    public Action<IServiceCollection>? Adjust { get; init; }

    /// <summary>A data folder that outlives the service, for restarts; null: one of its own, deleted with it.</summary>
    public string? DataFolder { get; init; }

    /// <summary>A database that outlives the service, for restarts and for two processes; null: one of its own, dropped with it.</summary>
    public PostgresDatabase? Database { get; init; }
}
