using System.Collections.Concurrent;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Trade;
using CapPrep.Engine.Checks;

namespace CapPrep.Service.Bench;

/// <summary>
/// Keeps the sheets of cloth of cap styles on frames. They depend on nothing but the two versions of the catalog, and
/// take longer to make than to use.
/// </summary>
internal sealed class SheetShelf
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<Front, FourSheets> _kept = new();

    /// <param name="shop">Whose catalog it is.</param>
    /// <param name="styleId">Version of the style.</param>
    /// <param name="style">The style at that version.</param>
    /// <param name="frameId">Version of the frame.</param>
    /// <param name="frame">The frame at that version.</param>
    public FourSheets Of(string shop, VersionedId styleId, CapStyle style, VersionedId frameId, CapFrame frame)
    {
        if (_kept.Count >= MostKept)
            _kept.Clear();
        return _kept.GetOrAdd(new(shop, styleId, frameId), _ => FourSheets.Of(style, frame));
    }

    private sealed record Front(string Shop, VersionedId Style, VersionedId Frame);
}
