using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CapPrep.Service.Storage;

/// <summary>Recognizes that somebody else was first.</summary>
internal static class Duplicate
{
    private const int SqliteConstraint = 19;

    /// <summary>True when a save failed because a row with the same key or unique value is there already.</summary>
    public static bool Is(DbUpdateException fault) => fault.InnerException switch
    {
        SqliteException sqlite => sqlite.SqliteErrorCode == SqliteConstraint,
        PostgresException postgres => postgres.SqlState == PostgresErrorCodes.UniqueViolation,
        _ => false,
    };
}
