using CapPrep.Service.Plumbing;
using Hangfire;
using Hangfire.AspNetCore;
using Hangfire.Common;
using Hangfire.InMemory;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;
using Npgsql;

namespace CapPrep.Service.Bench;

/// <summary>
/// Hangfire as executor. Everything it keeps static inside is given per host instead, so that two hosts in one
/// process do not run each other's jobs.
/// </summary>
internal static class HangfireSetup
{
    private const long SchemaLock = 0x6361_7070_7265_7002;

    public static IServiceCollection AddHangfireOfThisHost(this IServiceCollection services, Settings settings)
    {
        services.AddSingleton(_ => Storage(settings));
        services.AddSingleton<JobActivator>(provider => new AspNetCoreJobActivator(provider.GetRequiredService<IServiceScopeFactory>()));
        services.AddSingleton<IJobFilterProvider, FaultFilter>();
        services.AddHangfire(_ => { });
        if (settings.Has(Role.Worker))
            services.AddHostedService<HangfireServers>();
        return services;
    }

    private static JobStorage Storage(Settings settings) => settings.Database.Provider == DatabaseProvider.Sqlite
        ? new InMemoryStorage(new InMemoryStorageOptions { MaxExpirationTime = TimeSpan.FromMinutes(2) })
        : Postgres(settings);

    /// <summary>Two processes that start at once prepare the schema one after the other.</summary>
    private static PostgreSqlStorage Postgres(Settings settings)
    {
        var options = new PostgreSqlStorageOptions
        {
            SchemaName = "hangfire",
            PrepareSchemaIfNecessary = settings.Database.MigrateAtStart,
            UseSlidingInvisibilityTimeout = true,
            InvisibilityTimeout = TimeSpan.FromSeconds(30),
            EnableLongPolling = false,
            QueuePollInterval = TimeSpan.FromMilliseconds(500),
        };
        using var connection = new NpgsqlConnection(settings.Database.ConnectionString);
        connection.Open();
        using var command = new NpgsqlCommand($"SELECT pg_advisory_lock({SchemaLock})", connection);
        command.ExecuteNonQuery();
        try
        {
            return new PostgreSqlStorage(new NpgsqlConnectionFactory(settings.Database.ConnectionString!, options), options)
            {
                JobExpirationTimeout = TimeSpan.FromHours(1),
            };
        }
        finally
        {
            command.CommandText = $"SELECT pg_advisory_unlock({SchemaLock})";
            command.ExecuteNonQuery();
        }
    }
}
