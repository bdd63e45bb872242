using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Intake;

/// <summary>The versions that a ticket's ids, and the shop's where it names none, stand for now.</summary>
/// <param name="Style">Null: the ticket's article number is of no style.</param>
/// <param name="Suggestions">With no style: ids of those whose article numbers come nearest.</param>
/// <param name="OtherStyles">With a style: those that could be taken instead, by id.</param>
internal sealed record Pins(
    ShopDefaults Shop,
    VersionedId? Style,
    IReadOnlyList<string> Suggestions,
    IReadOnlyList<VersionedId> OtherStyles,
    VersionedId Machine,
    VersionedId Frame,
    string DefaultFrame,
    VersionedId Station,
    VersionedId Book)
{
    /// <summary>The built-in book below the shop's own; null when the built-in one was chosen.</summary>
    public VersionedId? BasedOn => Book.Id == HouseBook.BookId ? null : new VersionedId(HouseBook.BookId, Embedded.HouseBook.Version);
}

/// <summary>Resolves ids against the shop's catalog. Ids that are unknown or retired are faults of the ticket.</summary>
internal sealed class PinDesk(CatalogShelf shelf, SkuLookup skus, ShopScope scope)
{
    // A catalog of more styles is looked at from its start.
    private const int MostOthers = 50;

    /// <summary>Null exactly when something was added to the faults.</summary>
    public async Task<Pins?> Pin(TicketIds ids, Faults faults, CancellationToken cancel)
    {
        var shop = await Defaults(cancel);
        var (style, suggestions) = await Style(ids, faults, cancel);
        var machine = await Find(new Wanted(CatalogKinds.Machines, "machine", "machine", ids.Machine ?? shop.Machine, OfShop(ids.Machine)), faults, cancel);
        var defaultFrame = machine is null ? null : TradeReader.Machine(machine.Body).Value!.CapFrames[0];
        var frame = (ids.CapFrame ?? defaultFrame) is { } wanted
            ? await Find(new Wanted(CatalogKinds.CapFrames, "capFrame", "cap frame", wanted, ids.CapFrame is null ? "the machine's first" : null), faults, cancel)
            : null;
        var station = await Find(new Wanted(CatalogKinds.FramingStations, "framingStation", "framing station", ids.FramingStation ?? shop.FramingStation, OfShop(ids.FramingStation)), faults, cancel);
        var book = await Find(new Wanted(CatalogKinds.RuleBooks, "ruleBook", "rule book", ids.RuleBook ?? shop.RuleBook, OfShop(ids.RuleBook)), faults, cancel);
        return faults.Any
            ? null
            : new Pins(shop, style is null ? null : Id(style), suggestions, await Others(style, cancel), Id(machine!), Id(frame!), defaultFrame!, Id(station!), Book(book!));
    }

    private async Task<IReadOnlyList<VersionedId>> Others(CatalogRow? style, CancellationToken cancel) => style is null
        ? []
        : [.. (await shelf.Current(scope.Required, CatalogKinds.CapStyles, MostOthers, cancel)).Where(other => other.Id != style.Id)];

    private static string? OfShop(string? named) => named is null ? "the shop's own" : null;

    private async Task<ShopDefaults> Defaults(CancellationToken cancel)
    {
        var row = await shelf.Latest(scope.Required, CatalogKinds.Shop, scope.Required, cancel)
            ?? throw new InvalidOperationException($"The shop {scope.Required} was never opened.");
        return TradeReader.Shop(row.Body).Value!.Defaults;
    }

    private async Task<(CatalogRow? Style, IReadOnlyList<string> Suggestions)> Style(TicketIds ids, Faults faults, CancellationToken cancel)
    {
        if (ids.CapStyle is { } id)
            return (await Find(new Wanted(CatalogKinds.CapStyles, "capStyle", "cap style", id, null), faults, cancel), []);
        return ids.CapSku is { } sku ? await skus.Find(sku, cancel) : (null, []);
    }

    private async Task<CatalogRow?> Find(Wanted wanted, Faults faults, CancellationToken cancel)
    {
        var row = await shelf.Latest(scope.Required, wanted.Kind, wanted.Id, cancel);
        if (row is { Retired: false })
            return row;
        var allowed = await shelf.Ids(scope.Required, wanted.Kind, cancel);
        faults.NotAllowed($"/{wanted.Member}", row is null ? ViolationCodes.UnknownId : ViolationCodes.RetiredId, wanted.Fault(row is not null), allowed);
        return null;
    }

    private static VersionedId Id(CatalogRow row) => new(row.Id, row.Version);

    // The program judges by the built-in book it brings, whatever newer row another process has written.
    private static VersionedId Book(CatalogRow row) =>
        row.Id == HouseBook.BookId ? new VersionedId(row.Id, Embedded.HouseBook.Version) : Id(row);

    /// <param name="Whose">Where the id comes from when the ticket names none.</param>
    private sealed record Wanted(string Kind, string Member, string Noun, string Id, string? Whose)
    {
        public string Fault(bool retired) => (Whose, retired) switch
        {
            (null, false) => $"There is no {Noun} '{Id}'.",
            (null, true) => $"The {Noun} '{Id}' is retired.",
            (_, false) => $"The ticket names no {Noun}, and {Whose}, '{Id}', does not exist.",
            (_, true) => $"The ticket names no {Noun}, and {Whose}, '{Id}', is retired.",
        };
    }
}
