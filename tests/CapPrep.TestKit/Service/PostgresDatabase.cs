using Npgsql;

namespace CapPrep.TestKit.Service;

/// <summary>A database of its own on the server that the environment names, dropped when disposed.</summary>
public sealed class PostgresDatabase : IAsyncDisposable
{
    /// <summary>Connection string of a server on which databases may be made.</summary>
    public const string Variable = "CAPPREP_TEST_POSTGRES";

    private readonly string _name;

    private PostgresDatabase(string name) => _name = name;

    /// <summary>The server, or null where the tests have none.</summary>
    public static string? Server => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } server ? server : null;

    public string ConnectionString => new NpgsqlConnectionStringBuilder(Server) { Database = _name, MaxPoolSize = 30 }.ToString();

    public static async Task<PostgresDatabase> Create()
    {
        var database = new PostgresDatabase("capprep_t_" + Guid.NewGuid().ToString("N"));
        await Run($"CREATE DATABASE {database._name}");
        return database;
    }

    public async ValueTask DisposeAsync()
    {
        await using (var connection = new NpgsqlConnection(ConnectionString))
            NpgsqlConnection.ClearPool(connection);
        await Run($"DROP DATABASE IF EXISTS {_name} WITH (FORCE)");
    }

    private static async Task Run(string statement)
    {
        var server = Server ?? throw new InvalidOperationException($"{Variable} is not set.");
        await using var source = NpgsqlDataSource.Create(server);
        await using var command = source.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}
