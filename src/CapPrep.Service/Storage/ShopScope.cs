namespace CapPrep.Service.Storage;

/// <summary>
/// The shop whose rows a scope may see. A request gets it from its key, a worker from its job; null sees all shops
/// and is for the loops only.
/// </summary>
internal sealed class ShopScope
{
    /// <summary>The shop of an installation with one.</summary>
    public const string Main = "main";

    public string? Shop { get; set; }

    /// <summary>The shop; asking for it where none was set is a fault of ours.</summary>
    public string Required => Shop ?? throw new InvalidOperationException("No shop was set for this scope.");
}
