using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Access;

/// <summary>
/// Lets a request pass that brings a known key with a scope its route admits, and limits the request to the key's
/// shop. Routes without <see cref="AdmittedScopes"/> are open.
/// </summary>
internal sealed class KeyGate(RequestDelegate next, Settings settings, TimeProvider clock) : IDisposable
{
    private const int WrongKeysPerMinute = 20;

    private static readonly TimeSpan LastUsedStep = TimeSpan.FromMinutes(1);

    private readonly PartitionedRateLimiter<string> _requests = PartitionedRateLimiter.Create<string, string>(key =>
        RateLimitPartition.GetTokenBucketLimiter(key, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = settings.Http.RequestsPerMinute,
            TokensPerPeriod = Math.Max(1, settings.Http.RequestsPerMinute / 60),
            ReplenishmentPeriod = TimeSpan.FromSeconds(1),
            QueueLimit = 0,
        }));

    private readonly PartitionedRateLimiter<IPAddress> _wrongKeys = PartitionedRateLimiter.Create<IPAddress, IPAddress>(address =>
        RateLimitPartition.GetFixedWindowLimiter(address, _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = WrongKeysPerMinute,
            Window = TimeSpan.FromMinutes(1),
            QueueLimit = 0,
        }));

    public async Task InvokeAsync(HttpContext context, AppDb db, ShopScope scope)
    {
        var admitted = context.GetEndpoint()?.Metadata.GetMetadata<AdmittedScopes>();
        if (admitted is null)
        {
            await next(context);
            return;
        }

        var refusal = await Admit(context, db, scope, admitted);
        await (refusal is null ? next(context) : refusal.ExecuteAsync(context));
    }

    public void Dispose()
    {
        _requests.Dispose();
        _wrongKeys.Dispose();
    }

    private async Task<Refusal?> Admit(HttpContext context, AppDb db, ShopScope scope, AdmittedScopes admitted)
    {
        if (context.Request.QueryString.Value?.Contains(KeyForm.Prefix, StringComparison.Ordinal) == true)
            return new Refusal(Problems.KeyInUrl, "The query holds what looks like an API key.");
        if (Bearer(context.Request) is not { } key)
            return new Refusal(Problems.KeyMissing, "The header Authorization does not hold 'Bearer' and a key.");

        var row = await Find(db, key, context.RequestAborted);
        if (row is null)
            return WrongKey(context.Connection.RemoteIpAddress);
        if (row.Expires <= clock.GetUtcNow())
            return new Refusal(Problems.KeyExpired, $"The key {row.Start} expired at {Json.Time(row.Expires.Value)}.");
        var scopes = row.Scopes.Split(',');
        if (!admitted.Any.Any(scopes.Contains))
            return new Refusal(Problems.ScopeMissing, $"This needs a key with the scope {string.Join(" or ", admitted.Any)}; the key {row.Start} has {row.Scopes}.");
        if (TakeTurn(context, row.Id) is { } limited)
            return limited;

        scope.Shop = row.Shop;
        context.Features.Set(new Caller(row.Id, row.Name, row.Shop, scopes));
        await NoteUse(db, row, context.RequestAborted);
        return null;
    }

    private static string? Bearer(HttpRequest request)
    {
        const string Scheme = "Bearer ";
        var header = request.Headers.Authorization.ToString();
        return header.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) && header.Length > Scheme.Length
            ? header[Scheme.Length..].Trim()
            : null;
    }

    private static async Task<KeyRow?> Find(AppDb db, string key, CancellationToken cancel)
    {
        if (!KeyForm.IsWellFormed(key))
            return null;
        var hash = KeyForm.Hash(key);
        return await db.Keys.IgnoreQueryFilters().AsNoTracking()
            .SingleOrDefaultAsync(row => row.Hash == hash && row.Ended == null, cancel);
    }

    private Refusal WrongKey(IPAddress? address)
    {
        using var lease = _wrongKeys.AttemptAcquire(address ?? IPAddress.None);
        return lease.IsAcquired
            ? new Refusal(Problems.KeyInvalid, "No key of this installation reads like that.")
            : new Refusal(Problems.WrongKeys, $"More than {WrongKeysPerMinute} wrong keys in a minute came from this address.") { RetryAfterSeconds = 60 };
    }

    private Refusal? TakeTurn(HttpContext context, string keyId)
    {
        using var lease = _requests.AttemptAcquire(keyId);
        var limit = settings.Http.RequestsPerMinute;
        var left = _requests.GetStatistics(keyId)?.CurrentAvailablePermits ?? 0;
        context.Response.Headers["RateLimit-Policy"] = string.Create(CultureInfo.InvariantCulture, $"\"requests\";q={limit};w=60");
        context.Response.Headers["RateLimit"] = string.Create(CultureInfo.InvariantCulture, $"\"requests\";r={left};t=1");
        return lease.IsAcquired
            ? null
            : new Refusal(Problems.RateLimited, $"More than {limit} requests in a minute.") { RetryAfterSeconds = 1 };
    }

    private async Task NoteUse(AppDb db, KeyRow row, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        if (row.LastUsed is { } last && now - last < LastUsedStep)
            return;
        await db.Keys.IgnoreQueryFilters()
            .Where(key => key.Id == row.Id)
            .ExecuteUpdateAsync(set => set.SetProperty(key => key.LastUsed, now), cancel);
    }
}
