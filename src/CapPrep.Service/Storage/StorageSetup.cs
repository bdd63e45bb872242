using CapPrep.Service.Plumbing;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>Registers the store that the settings choose.</summary>
internal static class StorageSetup
{
    public static IServiceCollection AddStorage(this IServiceCollection services, Settings settings)
    {
        services.AddScoped<ShopScope>();
        if (settings.Database.Provider == DatabaseProvider.Sqlite)
        {
            services.AddDbContext<SqliteAppDb>(options => Sqlite(options, settings));
            services.AddScoped<AppDb>(provider => provider.GetRequiredService<SqliteAppDb>());
        }
        else
        {
            services.AddDbContext<PostgresAppDb>(options => Watched(options.UseNpgsql(settings.Database.ConnectionString)));
            services.AddScoped<AppDb>(provider => provider.GetRequiredService<PostgresAppDb>());
        }

        services.AddSingleton(provider => Secrets.Open(settings));
        services.AddScoped<DocumentStore>();
        services.AddScoped<CatalogShelf>();
        services.AddScoped<DecisionShelf>();
        services.AddScoped<DecisionPins>();
        services.AddScoped<StarterSeed>();
        return services;
    }

    private static void Sqlite(DbContextOptionsBuilder options, Settings settings) => Watched(options
        .UseSqlite(SqliteFile.ConnectionString(settings.DataFolder))
        .AddInterceptors(new SqlitePragmas()));

    private static void Watched(DbContextOptionsBuilder options)
    {
        if (Checkpoints.IsArmed(Checkpoints.Migrating))
            options.AddInterceptors(new MigrationCheckpoint());
    }
}
