using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Storage;

/// <summary>What a claim gives: the shop and the fence under which the claimer may store its result.</summary>
internal sealed record Claim(string Shop, string Id, long Fence);

/// <summary>Names of the counters of a shop.</summary>
internal static class Counters
{
    /// <summary>Changes of jobs and events, in commit order.</summary>
    public const string Position = "position";

    /// <summary>Numbers of jobs, as people use them.</summary>
    public const string Number = "number";

    /// <summary>Events of one type.</summary>
    public static string Sequence(string type) => "seq:" + type;

    /// <summary>How often an order was finished.</summary>
    public static string Order(string orderNumber) => "order:" + orderNumber;
}

/// <summary>
/// The only SQL written by hand: statements that must be one statement to be safe between processes. Both stores
/// take the same text (UPDATE ... RETURNING); where they would differ, the two dialects stand side by side.
/// </summary>
internal static class Sql
{
    private const long DocumentsLock = 0x6361_7070_7265_7001;

    /// <summary>
    /// Raises a counter and gives its new value. The row stays locked until the transaction ends, so numbers are
    /// gapless and in commit order; the caller must be inside a transaction.
    /// </summary>
    public static async Task<long> Next(this AppDb db, string shop, string name, CancellationToken cancel)
    {
        var values = await db.Database.SqlQuery<long>(
            $"""
             INSERT INTO counters (shop, name, value) VALUES ({shop}, {name}, 1)
             ON CONFLICT (shop, name) DO UPDATE SET value = counters.value + 1
             RETURNING value
             """).ToListAsync(cancel);
        return values[0];
    }

    /// <summary>Claims a job; null when another worker has it or it has ended.</summary>
    public static async Task<Claim?> ClaimJob(
        this AppDb db, string id, string me, DateTimeOffset now, TimeSpan lease, CancellationToken cancel)
    {
        var at = now.ToUnixTimeMilliseconds();
        var until = (now + lease).ToUnixTimeMilliseconds();
        var claims = await db.Database.SqlQuery<Claim>(
            $"""
             UPDATE jobs SET status = 'Working', lease_holder = {me}, lease_until = {until}, fence = fence + 1,
                 attempts = attempts + 1, started = COALESCE(started, {at})
             WHERE id = {id} AND (status = 'Queued' OR (status = 'Working' AND lease_until < {at}))
             RETURNING shop AS "Shop", id AS "Id", fence AS "Fence"
             """).ToListAsync(cancel);
        return claims.SingleOrDefault();
    }

    /// <summary>Claims an owed delivery that is due; null when another process has it or nothing is owed.</summary>
    public static async Task<Claim?> ClaimDelivery(
        this AppDb db, string id, string me, DateTimeOffset now, TimeSpan lease, CancellationToken cancel)
    {
        var at = now.ToUnixTimeMilliseconds();
        var until = (now + lease).ToUnixTimeMilliseconds();
        var claims = await db.Database.SqlQuery<Claim>(
            $"""
             UPDATE deliveries SET lease_holder = {me}, lease_until = {until}, fence = fence + 1
             WHERE id = {id} AND state = 'Owed' AND next_at <= {at} AND (lease_until IS NULL OR lease_until < {at})
             RETURNING shop AS "Shop", id AS "Id", fence AS "Fence"
             """).ToListAsync(cancel);
        return claims.SingleOrDefault();
    }

    /// <summary>Moves the ends of the leases that this process holds on some jobs; gives their number.</summary>
    public static Task<int> RenewJobLeases(
        this AppDb db, string me, IReadOnlyCollection<string> ids, DateTimeOffset until, CancellationToken cancel) =>
        db.Jobs.IgnoreQueryFilters()
            .Where(job => job.Status == JobStatus.Working && job.LeaseHolder == me && ids.Contains(job.Id))
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.LeaseUntil, until), cancel);

    /// <summary>
    /// Takes or renews a lease for something that one process does at a time; false when another holder has it.
    /// </summary>
    /// <param name="evenIfHeld">Whoever holds it is known to have ended.</param>
    public static async Task<bool> TakeLease(
        this AppDb db, LeaseRow wanted, DateTimeOffset now, bool evenIfHeld, CancellationToken cancel)
    {
        var at = now.ToUnixTimeMilliseconds();
        var until = wanted.Until.ToUnixTimeMilliseconds();
        var taken = await db.Database.ExecuteSqlAsync(
            $"""
             UPDATE leases SET shop = {wanted.Shop}, until = {until}, holder = {wanted.Holder},
                 fence = CASE WHEN holder = {wanted.Holder} THEN fence ELSE fence + 1 END
             WHERE name = {wanted.Name} AND (holder = {wanted.Holder} OR until < {at} OR {evenIfHeld})
             """, cancel);
        return taken == 1 || await db.Database.ExecuteSqlAsync(
            $"""
             INSERT INTO leases (shop, name, holder, until, fence) VALUES ({wanted.Shop}, {wanted.Name}, {wanted.Holder}, {until}, 1)
             ON CONFLICT DO NOTHING
             """, cancel) == 1;
    }

    /// <summary>
    /// Until the caller's transaction ends nobody erases documents, since documents under their own hash are shared
    /// between jobs. SQLite has one writer at a time, so nothing is needed there.
    /// </summary>
    public static Task ShareDocuments(this AppDb db, CancellationToken cancel) => db.Database.IsNpgsql()
        ? db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock_shared({DocumentsLock})", cancel)
        : Task.CompletedTask;

    /// <summary>Until the caller's transaction ends nobody adds documents.</summary>
    public static Task OwnDocuments(this AppDb db, CancellationToken cancel) => db.Database.IsNpgsql()
        ? db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({DocumentsLock})", cancel)
        : Task.CompletedTask;

    /// <summary>
    /// Until the caller's transaction ends nobody else adds a revision to the same line of the same order.
    /// </summary>
    public static Task OwnLine(
        this AppDb db, string shop, string orderNumber, string line, string location, CancellationToken cancel) =>
        db.Own($"{shop}\n{orderNumber}\n{line}\n{location}", cancel);

    /// <summary>Until the caller's transaction ends nobody else decides anything of the same location and cap style.</summary>
    public static Task OwnDecisions(this AppDb db, Binding binding, CancellationToken cancel) =>
        db.Own($"decisions\n{binding.Shop}\n{binding.CapStyle}\n{binding.Location}", cancel);

    /// <summary>Locks a name until the transaction ends. SQLite has one writer at a time, so nothing is needed there.</summary>
    private static Task Own(this AppDb db, string name, CancellationToken cancel)
    {
        if (!db.Database.IsNpgsql())
            return Task.CompletedTask;
        var mark = BinaryPrimitives.ReadInt64LittleEndian(SHA256.HashData(Encoding.UTF8.GetBytes(name)));
        return db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({mark})", cancel);
    }
}
