using System.Globalization;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Catalog;

/// <summary>One resource named by another.</summary>
/// <param name="Pointer">Where it is named.</param>
/// <param name="MustBeInUse">Naming a retired one is a fault too.</param>
internal sealed record Mention(string Pointer, string Kind, string Id, bool MustBeInUse = false)
{
    public static IEnumerable<Mention> Of(Machine machine) => Each("/capFrames", CatalogKinds.CapFrames, machine.CapFrames);

    public static IEnumerable<Mention> Of(CapFrame frame) => Each("/forStyles", CatalogKinds.CapStyles, frame.ForStyles);

    public static IEnumerable<Mention> Of(RuleBook book) => book.Overrides
        .Select((row, i) => (row.CapStyle, Pointer: string.Create(CultureInfo.InvariantCulture, $"/overrides/{i}/when/capStyle")))
        .Where(row => row.CapStyle is not null)
        .Select(row => new Mention(row.Pointer, CatalogKinds.CapStyles, row.CapStyle!));

    public static IEnumerable<Mention> Of(Shop shop) =>
    [
        new("/defaults/machine", CatalogKinds.Machines, shop.Defaults.Machine, MustBeInUse: true),
        new("/defaults/framingStation", CatalogKinds.FramingStations, shop.Defaults.FramingStation, MustBeInUse: true),
        new("/defaults/ruleBook", CatalogKinds.RuleBooks, shop.Defaults.RuleBook, MustBeInUse: true),
    ];

    private static IEnumerable<Mention> Each(string pointer, string kind, IEnumerable<string> ids) =>
        ids.Select((id, i) => new Mention(string.Create(CultureInfo.InvariantCulture, $"{pointer}/{i}"), kind, id));
}
