namespace CapPrep.Service.Storage;

/// <summary>Ids of everything the service makes: a prefix and the 32 hex digits of a version-7 UUID.</summary>
internal static class Ids
{
    public const string Job = "job_";
    public const string Event = "evt_";
    public const string Webhook = "whk_";
    public const string Delivery = "dlv_";
    public const string Key = "key_";
    public const string Drop = "drp_";
    public const string SewOut = "sew_";
    public const string Decision = "dec_";

    /// <summary>A new id whose time is the given clock's.</summary>
    public static string New(string prefix, TimeProvider clock) =>
        prefix + Guid.CreateVersion7(clock.GetUtcNow()).ToString("N");
}
