using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Calls;

/// <summary>
/// Lets a request be repeated safely: the same <c>Idempotency-Key</c> with the same content gives the same answer. What
/// differs between two tries of one request (boundary, order of parts, spacing, file name) does not count.
/// </summary>
internal sealed class Idempotency(AppDb db, TimeProvider clock)
{
    public const string Header = "Idempotency-Key";

    private const int LongestKey = 255;

    private static readonly TimeSpan Kept = TimeSpan.FromDays(7);

    /// <summary>Reads the header: 1 to 255 visible ASCII characters, with or without quotation marks around them.</summary>
    public static (string? Key, Refusal? Refusal) Key(HttpRequest request)
    {
        var values = request.Headers[Header];
        if (values.Count == 0)
            return (null, null);
        var text = values.Count == 1 ? values.ToString() : "";
        var key = text is ['"', .. var inner, '"'] ? inner : text;
        return key.Length is > 0 and <= LongestKey && key.All(c => c is > ' ' and <= '~')
            ? (key, null)
            : (null, Malformed());
    }

    /// <summary>The request that used this key before; null: none within the time keys are kept.</summary>
    public Task<IdempotencyRow?> Earlier(string shop, string key, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        return db.Idempotency.AsNoTracking()
            .SingleOrDefaultAsync(row => row.Shop == shop && row.Key == key && row.Expires > now, cancel);
    }

    /// <summary>Notes the key in the caller's transaction, in place of one whose time is over.</summary>
    /// <param name="wanted">Everything but the time until which it is kept.</param>
    public async Task Note(IdempotencyRow wanted, CancellationToken cancel)
    {
        var now = clock.GetUtcNow();
        await db.Idempotency.Where(row => row.Shop == wanted.Shop && row.Key == wanted.Key && row.Expires <= now).ExecuteDeleteAsync(cancel);
        wanted.Expires = now + Kept;
        db.Idempotency.Add(wanted);
    }

    private static Refusal Malformed() => new(Problems.HeaderInvalid, $"{Header} cannot be used.")
    {
        Violations = [new Violation("header", ViolationCodes.BadFormat, "One key of 1 to 255 visible ASCII characters is wanted.") { Pointer = Header }],
    };
}
