using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Access;

/// <summary>Notes who changed what, in the caller's transaction.</summary>
internal sealed class AuditTrail(AppDb db, TimeProvider clock)
{
    /// <summary>Stands for the key where there is none.</summary>
    public const string Service = "service";

    /// <param name="key">Id of the key, or <c>service</c>.</param>
    /// <param name="action"><c>put</c>, <c>retire</c>, <c>add</c>, <c>change</c> or <c>end</c>.</param>
    public void Note(
        string shop, string key, string action, string kind, string target, int? version = null, string? beforeSha = null, string? afterSha = null) =>
        db.Audit.Add(new AuditRow
        {
            Shop = shop,
            Id = Ids.New("aud_", clock),
            At = clock.GetUtcNow(),
            Key = key,
            Action = action,
            Kind = kind,
            Target = target,
            Version = version,
            BeforeSha = beforeSha,
            AfterSha = afterSha,
        });
}
