using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CapPrep.Service.Storage;

/// <summary>Recognizes that somebody else was first, so that the work is begun again and looks again.</summary>
internal static class Race
{
    private const int SqliteConstraint = 19;

    /// <summary>
    /// True when a statement failed because a row with the same key or unique value is there already, or because two
    /// transactions waited for one another and this one was chosen to end.
    /// </summary>
    public static bool IsLost(Exception fault) => fault switch
    {
        DbUpdateException { InnerException: { } inner } => IsLost(inner),
        SqliteException sqlite => sqlite.SqliteErrorCode == SqliteConstraint,
        PostgresException postgres => postgres.SqlState
            is PostgresErrorCodes.UniqueViolation or PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure,
        _ => false,
    };
}
