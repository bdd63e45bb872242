using System.Reflection;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade.Readers;

namespace CapPrep.Engine.Trade;

/// <summary>The trade data that is built in. Each is read once, when first asked for.</summary>
public static class Embedded
{
    private static readonly Assembly Own = typeof(Embedded).Assembly;

    private static readonly Lazy<PublishedSources> Sources = new(() => Value(FactReader.Read(Bytes("sources.json")), "sources.json"));

    private static readonly Lazy<HouseBook> House = new(() => Value(HouseBookReader.Read(HouseBookBytes), "rules.json"));

    private static readonly Lazy<StarterCatalog> Starter = new(ReadStarter);

    /// <summary>The rows of the fact table that limits and catalog figures name.</summary>
    public static PublishedSources PublishedSources => Sources.Value;

    /// <summary>The built-in rule book.</summary>
    public static HouseBook HouseBook => House.Value;

    /// <summary>The built-in rule book as JSON.</summary>
    public static ReadOnlyMemory<byte> HouseBookBytes => Bytes("rules.json");

    /// <summary>Cap styles, frames, machines, stations and shop settings that a new shop begins with.</summary>
    public static StarterCatalog StarterCatalog => Starter.Value;

    private static StarterCatalog ReadStarter() => new(
        Folder("cap-styles/", TradeReader.CapStyle, style => style.Id),
        Folder("cap-frames/", TradeReader.CapFrame, frame => frame.Id),
        Folder("machines/", TradeReader.Machine, machine => machine.Id),
        Folder("framing-stations/", TradeReader.FramingStation, station => station.Id),
        Resource("shop.json", TradeReader.Shop, _ => "main"));

    private static IReadOnlyList<StarterResource<T>> Folder<T>(
        string folder, Func<ReadOnlyMemory<byte>, ReadResult<T>> read, Func<T, string> id)
        where T : class =>
        [.. Own.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => Resource(name, read, id))];

    private static StarterResource<T> Resource<T>(
        string name, Func<ReadOnlyMemory<byte>, ReadResult<T>> read, Func<T, string> id)
        where T : class
    {
        var bytes = Bytes(name);
        var value = Value(read(bytes), name);
        return new(id(value), bytes, value);
    }

    private static T Value<T>(ReadResult<T> result, string name)
        where T : class =>
        result.Value ?? throw new InvalidOperationException(
            $"{name}: {string.Join(' ', result.Violations.Select(violation => $"{violation.Pointer} {violation.Message}"))}");

    private static ReadOnlyMemory<byte> Bytes(string name)
    {
#pragma warning disable RS0030 // The assembly's own resources are handed out as streams.
        using var stream = Own.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The engine was built without {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
#pragma warning restore RS0030
        return bytes;
    }
}
