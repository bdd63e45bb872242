using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Bench;

/// <summary>Reads everything a job was pinned to when it was accepted, however the catalog has changed since.</summary>
internal sealed class PinnedSetup(CatalogShelf shelf, SheetShelf sheets)
{
    public async Task<Setup> Load(JobRow job, ResolvedTicket ticket, CancellationToken cancel)
    {
        var inputs = JobInputs.Read(job.Inputs);
        var style = inputs.CapStyle is { } id ? await Load(job, CatalogKinds.CapStyles, id, TradeReader.CapStyle, cancel) : null;
        var frame = await Load(job, CatalogKinds.CapFrames, inputs.CapFrame, TradeReader.CapFrame, cancel);
        return new Setup
        {
            Style = style,
            StyleSuggestions = inputs.StyleSuggestions,
            OtherStyles = await Others(job, inputs, cancel),
            Frame = frame,
            Sheets = style is null ? null : sheets.Of(job.Shop, inputs.CapStyle!, style, inputs.CapFrame, frame),
            Machine = await Load(job, CatalogKinds.Machines, inputs.Machine, TradeReader.Machine, cancel),
            Station = await Load(job, CatalogKinds.FramingStations, inputs.FramingStation, TradeReader.FramingStation, cancel),
            Rules = await Rules(job, inputs, ticket, style, cancel),
        };
    }

    private async Task<IReadOnlyList<CapStyle>> Others(JobRow job, JobInputs inputs, CancellationToken cancel)
    {
        var styles = new List<CapStyle>();
        foreach (var id in inputs.OtherStyles)
            styles.Add(await Load(job, CatalogKinds.CapStyles, id, TradeReader.CapStyle, cancel));
        return styles;
    }

    /// <summary>How the shop prints, as it stands now.</summary>
    public async Task<Shop> Shop(JobRow job, CancellationToken cancel)
    {
        var row = await shelf.Latest(job.Shop, CatalogKinds.Shop, job.Shop, cancel);
        return Value(TradeReader.Shop(row!.Body), CatalogKinds.Shop);
    }

    private async Task<EffectiveRules> Rules(
        JobRow job, JobInputs inputs, ResolvedTicket ticket, CapStyle? style, CancellationToken cancel)
    {
        var house = await House(job, inputs.HouseVersion, cancel);
        (RuleBook, int)? own = inputs.BasedOn is null
            ? null
            : (await Load(job, CatalogKinds.RuleBooks, inputs.RuleBook, bytes => TradeReader.RuleBook(bytes, house), cancel), inputs.RuleBook.Version);
        return EffectiveRules.For(house, own, ticket.Received.Customer, style?.Id, ticket.Location);
    }

    private async Task<HouseBook> House(JobRow job, int version, CancellationToken cancel) =>
        version == Embedded.HouseBook.Version
            ? Embedded.HouseBook
            : await Load(job, CatalogKinds.RuleBooks, new VersionedId(HouseBook.BookId, version), TradeReader.HouseBook, cancel);

    private async Task<T> Load<T>(
        JobRow job, string kind, VersionedId id, Func<ReadOnlyMemory<byte>, ReadResult<T>> read, CancellationToken cancel)
        where T : class
    {
        var row = await shelf.At(job.Shop, kind, id.Id, id.Version, cancel)
            ?? throw new InvalidOperationException($"{kind} {id.Id} version {id.Version} is not on the shelf.");
        return Value(read(row.Body), $"{kind} {id.Id} version {id.Version}");
    }

    private static T Value<T>(ReadResult<T> read, string what)
        where T : class =>
        read.Value ?? throw new InvalidOperationException($"{what} cannot be read: {read.Violations[0].Message}");
}
