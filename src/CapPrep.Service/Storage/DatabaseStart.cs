using System.Data.Common;
using CapPrep.Service.Plumbing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CapPrep.Service.Storage;

/// <summary>Brings the tables to the state this version needs, before anything else runs.</summary>
internal static class DatabaseStart
{
    /// <summary>
    /// Migrates when the settings say so. On SQLite the caller holds the data folder, so a migration lock left by a
    /// killed process is nobody's and is removed: with it the next start would wait for ever.
    /// </summary>
    public static async Task Prepare(IServiceProvider services, Settings settings, CancellationToken cancel)
    {
        if (settings.Database.Provider == DatabaseProvider.Sqlite)
            SqliteFile.Create(settings);
        if (!settings.Database.MigrateAtStart)
            return;

        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        if (settings.Database.Provider == DatabaseProvider.Sqlite)
            await db.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancel);
        await db.Database.MigrateAsync(cancel);
    }
}

/// <summary>Passes the checkpoint in the middle of the first migration, while its lock is held.</summary>
internal sealed class MigrationCheckpoint : DbCommandInterceptor
{
    public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        if (command.CommandText.Contains("CREATE TABLE jobs", StringComparison.Ordinal)
            || command.CommandText.Contains("CREATE TABLE \"jobs\"", StringComparison.Ordinal))
        {
            Checkpoints.Pass(Checkpoints.Migrating);
        }

        return base.NonQueryExecutingAsync(command, eventData, result, cancellationToken);
    }
}
