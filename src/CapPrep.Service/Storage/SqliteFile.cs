using System.Data.Common;
using CapPrep.Service.Plumbing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CapPrep.Service.Storage;

/// <summary>The one database file of the embedded default.</summary>
internal static class SqliteFile
{
    public static string PathIn(string dataFolder) => Path.Combine(dataFolder, "capprep.db");

    public static string ConnectionString(string dataFolder) => new SqliteConnectionStringBuilder
    {
        DataSource = PathIn(dataFolder),
        DefaultTimeout = 30,
    }.ToString();

    /// <summary>
    /// Creates the file with what can hardly be changed later: page size and incremental vacuum, without which it
    /// would never shrink.
    /// </summary>
    public static void Create(Settings settings)
    {
        using var connection = new SqliteConnection(ConnectionString(settings.DataFolder));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA page_size = 8192; PRAGMA auto_vacuum = INCREMENTAL; PRAGMA journal_mode = WAL;";
        command.ExecuteNonQuery();
    }
}

/// <summary>
/// Settings of every SQLite connection. FULL, since what was accepted must survive a power cut.
/// </summary>
internal sealed class SqlitePragmas : DbConnectionInterceptor
{
    private const string Text = "PRAGMA synchronous = FULL; PRAGMA busy_timeout = 10000; PRAGMA foreign_keys = ON;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Text;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        var command = connection.CreateCommand();
        await using (command)
        {
            command.CommandText = Text;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
