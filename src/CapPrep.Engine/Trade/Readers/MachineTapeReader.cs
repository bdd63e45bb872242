using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>What a machine makes of a tape's records.</summary>
internal static class MachineTapeReader
{
    /// <summary>Jump records that mean a trim where a body names no count (row T5, from memory).</summary>
    private const int UsualTrimCount = 3;

    internal static MachineTape? Read(ObjectReader reader)
    {
        reader.Require("trim", "maxMoveMm", "turn180");
        var trim = reader.Object("trim", Trim);
        return new(
            trim?.By ?? default,
            trim?.Count ?? 0,
            reader.Choice("trimPattern", Words<TrimPattern>.Standard) ?? TrimPattern.OutAndBack,
            reader.Number("maxMoveMm", 1, 12.1) ?? 0,
            reader.Choice("turn180", Words<TurnedBy>.Standard) ?? default);
    }

    private static TrimRule? Trim(ObjectReader reader)
    {
        reader.Require("by");
        var by = reader.Choice("by", Words<TrimBy>.Standard);
        var count = reader.Integer("count", 1, 20);
        if (by == TrimBy.Jumps && !reader.Has("count"))
            reader.Faults.Required(reader.PointerTo("count"), "count");
        if (by is not null and not TrimBy.Jumps && count is not null)
            reader.Contradicts("count", "Only a machine that trims by jumps has a count of them.");
        return new(by ?? default, count ?? UsualTrimCount);
    }

    private sealed record TrimRule(TrimBy By, int Count);
}
