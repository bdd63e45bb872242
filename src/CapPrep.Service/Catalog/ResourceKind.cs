using CapPrep.Engine.Reading;
using CapPrep.Engine.Trade;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Catalog;

/// <summary>One kind of catalog resource, as far as the kinds differ; the handlers are the same for all.</summary>
/// <param name="Path">Word in the address, and of <see cref="CatalogKinds"/>.</param>
/// <param name="Noun">In a sentence: "cap style".</param>
/// <param name="One">In the names of operations: "CapStyle".</param>
/// <param name="Invalid">The problem of a body with faults.</param>
/// <param name="Read">Reads a body.</param>
internal sealed record ResourceKind(
    string Path, string Noun, string One, Problem Invalid, Func<ReadOnlyMemory<byte>, ResourceReading> Read)
{
    public static readonly ResourceKind CapStyles = new(
        CatalogKinds.CapStyles, "cap style", "CapStyle", Problems.CatalogInvalid,
        body => ResourceReading.Of(TradeReader.CapStyle(body), style => style.Id, _ => []));

    public static readonly ResourceKind CapFrames = new(
        CatalogKinds.CapFrames, "cap frame", "CapFrame", Problems.CatalogInvalid,
        body => ResourceReading.Of(TradeReader.CapFrame(body), frame => frame.Id, Mention.Of));

    public static readonly ResourceKind Machines = new(
        CatalogKinds.Machines, "machine", "Machine", Problems.CatalogInvalid,
        body => ResourceReading.Of(TradeReader.Machine(body), machine => machine.Id, Mention.Of));

    public static readonly ResourceKind FramingStations = new(
        CatalogKinds.FramingStations, "framing station", "FramingStation", Problems.CatalogInvalid,
        body => ResourceReading.Of(TradeReader.FramingStation(body), station => station.Id, _ => []));

    public static readonly ResourceKind RuleBooks = new(
        CatalogKinds.RuleBooks, "rule book", "RuleBook", Problems.RuleBookInvalid,
        body => ResourceReading.Of(TradeReader.RuleBook(body, Embedded.HouseBook), book => book.Id, Mention.Of));

    public static readonly ResourceKind Shop = new(
        CatalogKinds.Shop, "shop", "Shop", Problems.CatalogInvalid,
        body => ResourceReading.Of(TradeReader.Shop(body), shop => shop.Id, Mention.Of));

    /// <summary>The kinds that have a list of their own.</summary>
    public static readonly IReadOnlyList<ResourceKind> Listed = [CapStyles, CapFrames, Machines, FramingStations, RuleBooks];

    /// <summary>The name of the member that holds the id.</summary>
    public string IdMember => Path == CatalogKinds.Shop ? "shop" : "id";

    /// <summary>The kind at a word of the address.</summary>
    public static ResourceKind At(string path) => Listed.Single(kind => kind.Path == path);

    /// <summary>True for what the program brings itself and nobody may change.</summary>
    public bool IsBuiltIn(string id) => Path == CatalogKinds.RuleBooks && id == HouseBook.BookId;
}

/// <summary>What reading a body gives.</summary>
/// <param name="Id">The id inside it; null: none, or faults.</param>
/// <param name="Violations">Every fault; empty: the body is sound in itself.</param>
/// <param name="Mentions">Other resources it names.</param>
internal sealed record ResourceReading(string? Id, IReadOnlyList<Violation> Violations, IReadOnlyList<Mention> Mentions)
{
    public static ResourceReading Of<T>(ReadResult<T> result, Func<T, string?> id, Func<T, IEnumerable<Mention>> mentions)
        where T : class =>
        result.Succeeded
            ? new ResourceReading(id(result.Value), [], [.. mentions(result.Value)])
            : new ResourceReading(null, result.Violations, []);
}
