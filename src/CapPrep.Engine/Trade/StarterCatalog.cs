namespace CapPrep.Engine.Trade;

/// <summary>One resource of the starter catalog: the bytes as they are stored, and what they mean.</summary>
/// <param name="Bytes">UTF-8 JSON, as a PUT body would be.</param>
public sealed record StarterResource<T>(string Id, ReadOnlyMemory<byte> Bytes, T Value)
    where T : class;

/// <summary>What a new shop begins with; every list in the order of the ids.</summary>
public sealed record StarterCatalog(
    IReadOnlyList<StarterResource<CapStyle>> CapStyles,
    IReadOnlyList<StarterResource<CapFrame>> CapFrames,
    IReadOnlyList<StarterResource<Machine>> Machines,
    IReadOnlyList<StarterResource<FramingStation>> FramingStations,
    StarterResource<Shop> Shop);
