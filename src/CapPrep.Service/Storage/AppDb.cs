using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace CapPrep.Service.Storage;

/// <summary>
/// All tables. One model, two empty subclasses: a migration set belongs to a store, the model does not. Times are
/// Unix milliseconds UTC, ids and words are text, JSON is UTF-8 bytes; names are snake_case in both stores.
/// </summary>
internal abstract class AppDb(DbContextOptions options, ShopScope scope) : DbContext(options)
{
    public DbSet<ShopEntry> Shops => Set<ShopEntry>();

    public DbSet<CounterRow> Counters => Set<CounterRow>();

    public DbSet<JobRow> Jobs => Set<JobRow>();

    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    public DbSet<JobDocumentRow> JobDocuments => Set<JobDocumentRow>();

    public DbSet<IdempotencyRow> Idempotency => Set<IdempotencyRow>();

    public DbSet<EventRow> Events => Set<EventRow>();

    public DbSet<EndpointRow> Endpoints => Set<EndpointRow>();

    public DbSet<DeliveryRow> Deliveries => Set<DeliveryRow>();

    public DbSet<AttemptRow> Attempts => Set<AttemptRow>();

    public DbSet<DropRow> Drops => Set<DropRow>();

    public DbSet<LeaseRow> Leases => Set<LeaseRow>();

    public DbSet<CatalogRow> Catalog => Set<CatalogRow>();

    public DbSet<KeyRow> Keys => Set<KeyRow>();

    public DbSet<AuditRow> Audit => Set<AuditRow>();

    public DbSet<SewOutRow> SewOuts => Set<SewOutRow>();

    public DbSet<DecisionRow> Decisions => Set<DecisionRow>();

    /// <summary>The shop this context is limited to; null: all shops. Read by the filters at every query.</summary>
    internal string? Shop => scope.Shop;

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UnixMilliseconds>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        Describe(modelBuilder);
        Limit<ShopEntry>(modelBuilder);
        Limit<CounterRow>(modelBuilder);
        Limit<JobRow>(modelBuilder);
        Limit<JobDocumentRow>(modelBuilder);
        Limit<IdempotencyRow>(modelBuilder);
        Limit<EventRow>(modelBuilder);
        Limit<EndpointRow>(modelBuilder);
        Limit<DeliveryRow>(modelBuilder);
        Limit<AttemptRow>(modelBuilder);
        Limit<DropRow>(modelBuilder);
        Limit<LeaseRow>(modelBuilder);
        Limit<CatalogRow>(modelBuilder);
        Limit<KeyRow>(modelBuilder);
        Limit<AuditRow>(modelBuilder);
        Limit<SewOutRow>(modelBuilder);
        Limit<DecisionRow>(modelBuilder);
        SnakeCase.Apply(modelBuilder.Model);
    }

    private void Limit<T>(ModelBuilder model)
        where T : ShopRow =>
        model.Entity<T>().HasQueryFilter(row => Shop == null || row.Shop == Shop);

    private static void Describe(ModelBuilder model)
    {
        model.Entity<ShopEntry>().ToTable("shops").HasKey(row => row.Shop);
        model.Entity<CounterRow>().ToTable("counters").HasKey(row => new { row.Shop, row.Name });
        DescribeJobs(model);
        model.Entity<DocumentRow>().ToTable("documents").HasKey(row => row.Sha256);
        model.Entity<JobDocumentRow>().ToTable("job_documents").HasKey(row => new { row.Shop, row.Job, row.Kind });
        model.Entity<JobDocumentRow>().HasIndex(row => row.Sha256);
        model.Entity<JobDocumentRow>().HasIndex(row => row.Expires);
        model.Entity<IdempotencyRow>().ToTable("idempotency").HasKey(row => new { row.Shop, row.Key });
        model.Entity<IdempotencyRow>().HasIndex(row => row.Expires);
        DescribeEvents(model);
        model.Entity<DropRow>().ToTable("drops").HasKey(row => new { row.Shop, row.Id });
        model.Entity<DropRow>().HasIndex(row => new { row.Shop, row.TapeSha, row.TicketSha, row.Seen });
        model.Entity<DropRow>().HasIndex(row => new { row.Shop, row.Root, row.State, row.Ended });
        model.Entity<LeaseRow>().ToTable("leases").HasKey(row => new { row.Shop, row.Name });
        model.Entity<LeaseRow>().HasIndex(row => row.Name).IsUnique();
        model.Entity<CatalogRow>().ToTable("catalog").HasKey(row => new { row.Shop, row.Kind, row.Id, row.Version });
        model.Entity<KeyRow>().ToTable("keys").HasKey(row => new { row.Shop, row.Id });
        model.Entity<KeyRow>().HasIndex(row => row.Hash).IsUnique();
        model.Entity<AuditRow>().ToTable("audit").HasKey(row => new { row.Shop, row.Id });
        model.Entity<AuditRow>().HasIndex(row => new { row.Shop, row.At });
        model.Entity<SewOutRow>().ToTable("sewouts").HasKey(row => new { row.Shop, row.Id });
        model.Entity<SewOutRow>().HasIndex(row => new { row.Shop, row.Job });
        model.Entity<DecisionRow>().ToTable("decisions").HasKey(row => new { row.Shop, row.Id });
        model.Entity<DecisionRow>().HasIndex(row => new { row.Shop, row.ReceivedStitchesSha });
        model.Entity<DecisionRow>().HasIndex(row => new { row.Shop, row.SewnStitchesSha });
        model.Entity<DecisionRow>().HasIndex(row => new { row.Shop, row.Job });
    }

    private static void DescribeJobs(ModelBuilder model)
    {
        var jobs = model.Entity<JobRow>();
        jobs.ToTable("jobs").HasKey(row => new { row.Shop, row.Id });
        jobs.HasIndex(row => row.Id).IsUnique();
        jobs.HasIndex(row => new { row.Shop, row.Number }).IsUnique();
        jobs.HasIndex(row => new { row.Shop, row.DropId }).IsUnique();
        jobs.HasIndex(row => new { row.Shop, row.OrderNumber, row.Line, row.Location, row.Revision }).IsUnique();
        jobs.HasIndex(row => new { row.Shop, row.Position });
        jobs.HasIndex(row => new { row.Shop, row.StitchesSha });
        jobs.HasIndex(row => row.QueuedAt).HasFilter("status IN ('Queued', 'Working')");
    }

    private static void DescribeEvents(ModelBuilder model)
    {
        model.Entity<EventRow>().ToTable("events").HasKey(row => new { row.Shop, row.Id });
        model.Entity<EventRow>().HasIndex(row => row.Id).IsUnique();
        model.Entity<EventRow>().HasIndex(row => new { row.Shop, row.Position }).IsUnique();
        model.Entity<EventRow>().HasIndex(row => new { row.Shop, row.Type, row.Sequence }).IsUnique();
        model.Entity<EventRow>().HasIndex(row => new { row.Shop, row.Job });
        model.Entity<EndpointRow>().ToTable("endpoints").HasKey(row => new { row.Shop, row.Id });
        model.Entity<DeliveryRow>().ToTable("deliveries").HasKey(row => new { row.Shop, row.Id });
        model.Entity<DeliveryRow>().HasIndex(row => row.Id).IsUnique();
        model.Entity<DeliveryRow>().HasIndex(row => new { row.Event, row.Target }).IsUnique();
        model.Entity<DeliveryRow>().HasIndex(row => new { row.Shop, row.Target, row.State });
        model.Entity<DeliveryRow>().HasIndex(row => row.NextAt).HasFilter("state = 'Owed'");
        model.Entity<AttemptRow>().ToTable("attempts").HasKey(row => new { row.Shop, row.Delivery, row.Number });
    }

    private sealed class UnixMilliseconds() : ValueConverter<DateTimeOffset, long>(
        time => time.ToUnixTimeMilliseconds(),
        milliseconds => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds));
}

/// <summary>The tables in one file of the data folder.</summary>
internal sealed class SqliteAppDb(DbContextOptions<SqliteAppDb> options, ShopScope scope) : AppDb(options, scope);

/// <summary>The tables in a PostgreSQL database.</summary>
internal sealed class PostgresAppDb(DbContextOptions<PostgresAppDb> options, ShopScope scope) : AppDb(options, scope);
