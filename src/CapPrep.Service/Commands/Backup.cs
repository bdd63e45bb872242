using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.Data.Sqlite;

namespace CapPrep.Service.Commands;

/// <summary>
/// Copies the SQLite database while the service uses it; copying the live file by hand gives a broken copy.
/// The key file of the secrets is kept apart on purpose and is not part of it.
/// </summary>
internal static class Backup
{
    public static Task<int> Run(string[] args)
    {
        var options = Options.Parse(args, "out");
        var target = Path.GetFullPath(options.Require("out"));
        var settings = ServiceHost.Settings(ServiceHost.CreateBuilder(options.Settings));
        if (settings.Database.Provider == DatabaseProvider.Postgres)
        {
            Console.WriteLine("With PostgreSQL, back up the database with: pg_dump --format=custom --file=" + target);
            return Task.FromResult(ExitCode.Success);
        }

        if (!File.Exists(SqliteFile.PathIn(settings.DataFolder)))
            throw new WrongCommandLineException($"There is no database in {settings.DataFolder}.");
        if (File.Exists(target))
            throw new WrongCommandLineException($"{target} exists; a back-up never overwrites.");
        Copy(settings, target);
        Console.WriteLine($"{target} written. Keep {settings.SecretsKeyFile} too, but not beside it.");
        return Task.FromResult(ExitCode.Success);
    }

    private static void Copy(Settings settings, string target)
    {
        using var source = new SqliteConnection(SqliteFile.ConnectionString(settings.DataFolder));
        source.Open();
        using var copy = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = target, Pooling = false }.ToString());
        copy.Open();
        source.BackupDatabase(copy);
    }
}
