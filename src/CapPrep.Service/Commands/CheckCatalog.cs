using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Service.Commands;

/// <summary>The catalog of <c>check</c>: the starter's, or a folder of the same layout laid over it.</summary>
internal sealed record CheckCatalog(
    IReadOnlyList<CapStyle> Styles,
    IReadOnlyList<CapFrame> Frames,
    IReadOnlyList<Machine> Machines,
    IReadOnlyList<FramingStation> Stations,
    IReadOnlyList<RuleBook> Books,
    Shop Shop)
{
    public static CheckCatalog Starter()
    {
        var starter = Embedded.StarterCatalog;
        return new CheckCatalog(
            [.. starter.CapStyles.Select(style => style.Value)],
            [.. starter.CapFrames.Select(frame => frame.Value)],
            [.. starter.Machines.Select(machine => machine.Value)],
            [.. starter.FramingStations.Select(station => station.Value)],
            [],
            starter.Shop.Value);
    }

    /// <summary>Folders cap-styles, cap-frames, machines, framing-stations and rule-books, and shop.json; each may be missing.</summary>
    /// <exception cref="WrongCommandLineException">A file cannot be read; every fault is named.</exception>
    public static CheckCatalog Read(string folder)
    {
        if (!Directory.Exists(folder))
            throw new WrongCommandLineException($"There is no folder {folder}.");
        var starter = Starter();
        var shop = Path.Combine(folder, "shop.json");
        return new CheckCatalog(
            Over(starter.Styles, All(folder, "cap-styles", TradeReader.CapStyle), style => style.Id),
            Over(starter.Frames, All(folder, "cap-frames", TradeReader.CapFrame), frame => frame.Id),
            Over(starter.Machines, All(folder, "machines", TradeReader.Machine), machine => machine.Id),
            Over(starter.Stations, All(folder, "framing-stations", TradeReader.FramingStation), station => station.Id),
            All(folder, "rule-books", bytes => TradeReader.RuleBook(bytes, Embedded.HouseBook)),
            File.Exists(shop) ? One(shop, TradeReader.Shop) : starter.Shop);
    }

    /// <summary>The ticket with its defaults and what it names; null and faults when it names what is not there.</summary>
    public (ResolvedTicket? Ticket, Setup? Setup) Resolve(Ticket ticket, string fileName, List<Violation> violations)
    {
        var faults = new Faults(TicketReader.Part, "A ticket");
        var style = ticket.CapStyle is { } id
            ? Find(Styles, item => item.Id, id, "capStyle", "cap style", faults)
            : Styles.FirstOrDefault(item => item.Skus.Contains(ticket.CapSku!, StringComparer.OrdinalIgnoreCase));
        var machine = Find(Machines, item => item.Id, ticket.Machine ?? Shop.Defaults.Machine, "machine", "machine", faults);
        var frame = machine is null ? null : Find(Frames, item => item.Id, ticket.CapFrame ?? machine.CapFrames[0], "capFrame", "cap frame", faults);
        var station = Find(Stations, item => item.Id, ticket.FramingStation ?? Shop.Defaults.FramingStation, "framingStation", "framing station", faults);
        var bookId = ticket.RuleBook ?? Shop.Defaults.RuleBook;
        var book = bookId == HouseBook.BookId ? null : Find(Books, item => item.Id, bookId, "ruleBook", "rule book", faults);
        violations.AddRange(faults.Violations);
        if (faults.Any)
            return (null, null);

        var resolved = TicketResolver.Resolve(ticket, Shop.Defaults, style?.Id, machine!.CapFrames[0], fileName);
        var rules = EffectiveRules.For(
            Embedded.HouseBook, book is null ? null : (book, 1), ticket.Customer, style?.Id, resolved.Location);
        return (resolved, new Setup
        {
            Style = style,
            StyleSuggestions = style is null ? [.. Styles.Select(item => item.Id).Order(StringComparer.Ordinal)] : [],
            OtherStyles = [.. Styles.Where(other => style is not null && other.Id != style.Id)],
            Frame = frame!,
            Machine = machine,
            Station = station!,
            Rules = rules,
        });
    }

    private static T? Find<T>(IReadOnlyList<T> items, Func<T, string> id, string wanted, string member, string noun, Faults faults)
        where T : class
    {
        var found = items.FirstOrDefault(item => id(item) == wanted);
        if (found is null)
            faults.NotAllowed($"/{member}", ViolationCodes.UnknownId, $"There is no {noun} '{wanted}'.", [.. items.Select(id).Order(StringComparer.Ordinal)]);
        return found;
    }

    private static IReadOnlyList<T> Over<T>(IReadOnlyList<T> below, IReadOnlyList<T> above, Func<T, string> id) =>
        [.. below.Where(item => above.All(own => id(own) != id(item))), .. above];

    private static IReadOnlyList<T> All<T>(string folder, string kind, Func<ReadOnlyMemory<byte>, ReadResult<T>> read)
        where T : class
    {
        var path = Path.Combine(folder, kind);
        return Directory.Exists(path)
            ? [.. Directory.EnumerateFiles(path, "*.json").Order(StringComparer.Ordinal).Select(file => One(file, read))]
            : [];
    }

    private static T One<T>(string file, Func<ReadOnlyMemory<byte>, ReadResult<T>> read)
        where T : class
    {
        var result = read(File.ReadAllBytes(file));
        return result.Value ?? throw new WrongCommandLineException(
            string.Join(Environment.NewLine, result.Violations.Select(fault => $"{file} {fault.Pointer}: {fault.Message}")));
    }
}
