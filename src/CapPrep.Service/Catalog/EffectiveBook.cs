using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Catalog;

/// <summary>
/// GET /v1/rule-books/{id}?effective=true: the built-in rows with the book laid over them for one customer, style and
/// location, each limit with the book that set it.
/// </summary>
internal sealed class EffectiveBook(CatalogShelf shelf, ShopScope scope)
{
    private static readonly string[] Known = ["effective", "capStyle", "customer", "location", "version"];

    public static bool IsAskedFor(HttpRequest request) => request.Query.Keys.Any(name => name != "version");

    public async Task<IResult> Get(string id, HttpRequest request, CancellationToken cancel)
    {
        var query = new QueryReader(request.Query, Known);
        var when = When.Read(query);
        var version = GetResources.Version(query);
        if (query.Refusal is { } refusal)
            return refusal;
        var row = version is { } wanted
            ? await shelf.At(scope.Required, CatalogKinds.RuleBooks, id, wanted, cancel)
            : await shelf.Latest(scope.Required, CatalogKinds.RuleBooks, id, cancel);
        if (row is null)
            return GetResources.Missing(ResourceKind.RuleBooks, id, version);
        return TypedResults.Bytes(Json.Bytes(writer => Write(writer, when, Rules(row, when))), Json.ContentType);
    }

    private static EffectiveRules Rules(CatalogRow row, When when)
    {
        var house = Embedded.HouseBook;
        (RuleBook, int)? book = row.Id == HouseBook.BookId ? null : (TradeReader.RuleBook(row.Body, house).Value!, row.Version);
        return EffectiveRules.For(house, book, when.Customer, when.CapStyle, when.Location);
    }

    private static void Write(Utf8JsonWriter writer, When when, EffectiveRules rules)
    {
        writer.WriteStartObject();
        writer.WriteString("id", rules.Book.Id);
        writer.WriteNumber("version", rules.Book.Version);
        writer.WriteBoolean("effective", true);
        when.Write(writer);
        WriteSewOrder(writer, rules.SewOrder);
        writer.WriteStartArray("rules");
        foreach (var rule in rules.Rows)
            EffectiveRuleJson.Write(writer, rule);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void WriteSewOrder(Utf8JsonWriter writer, OrderSettings settings)
    {
        writer.WriteStartObject("sewOrder");
        if (settings.ExtraColorChanges is { } colors)
            writer.WriteNumber("extraColorChanges", colors);
        if (settings.ExtraTrims is { } trims)
            writer.WriteNumber("extraTrims", trims);
        if (settings.StartEndAtBottomCenter is { } bottom)
            writer.WriteBoolean("startEndAtBottomCenter", bottom);
        writer.WriteEndObject();
    }

    /// <summary>What the book is asked about.</summary>
    private sealed record When(string? Customer, string? CapStyle, CapLocation Location)
    {
        public static When Read(QueryReader query)
        {
            var words = Words<CapLocation>.Standard;
            if (query.Flag("effective") != true)
                query.Fault("effective", ViolationCodes.Required, "With capStyle, customer or location, 'effective=true' is wanted.");
            return new When(
                query.Text("customer"),
                query.Text("capStyle"),
                query.Word("location", words.All) is { } word && words.TryParse(word, out var location) ? location : CapLocation.Front);
        }

        public void Write(Utf8JsonWriter writer)
        {
            writer.WriteStartObject("when");
            if (Customer is not null)
                writer.WriteString("customer", Customer);
            if (CapStyle is not null)
                writer.WriteString("capStyle", CapStyle);
            writer.WriteString("location", Words<CapLocation>.Standard.Of(Location));
            writer.WriteEndObject();
        }
    }
}
