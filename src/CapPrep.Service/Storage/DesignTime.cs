using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace CapPrep.Service.Storage;

/// <summary>Used by <c>dotnet ef migrations add NAME --context SqliteAppDb -o Storage/Migrations/Sqlite</c>.</summary>
internal sealed class SqliteDesignTime : IDesignTimeDbContextFactory<SqliteAppDb>
{
    public SqliteAppDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteAppDb>().UseSqlite("Data Source=:memory:").Options, new ShopScope());
}

/// <summary>Used by <c>dotnet ef migrations add NAME --context PostgresAppDb -o Storage/Migrations/Postgres</c>.</summary>
internal sealed class PostgresDesignTime : IDesignTimeDbContextFactory<PostgresAppDb>
{
    public PostgresAppDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresAppDb>().UseNpgsql("Host=localhost").Options, new ShopScope());
}
