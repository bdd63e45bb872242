using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks;

/// <summary>The built-in book with a shop's book and its matching overrides laid over it, for one ticket.</summary>
/// <param name="Rows">In the built-in order: what costs most first.</param>
/// <param name="SewOrder">Order settings in force.</param>
/// <param name="Book">The book the ticket asked for.</param>
public sealed record EffectiveRules(
    IReadOnlyList<EffectiveRule> Rows,
    OrderSettings SewOrder,
    VersionedId Book)
{
    /// <summary>The rule of that id, or null when it is switched off.</summary>
    public EffectiveRule? Find(string rule) => Rows.FirstOrDefault(row => row.Row.Rule == rule && !row.Off);

    /// <summary>
    /// The rules for one ticket: the built-in rows, then the book's rules, then each override whose every condition
    /// matches, in its order.
    /// </summary>
    /// <param name="house">The built-in book.</param>
    /// <param name="book">The shop's book and its version; null: the built-in one alone.</param>
    /// <param name="customer">The ticket's customer, null when it names none.</param>
    /// <param name="capStyle">The ticket's style, null when it is unknown.</param>
    /// <param name="location">Where the design is sewn.</param>
    public static EffectiveRules For(
        HouseBook house, (RuleBook Book, int Version)? book, string? customer, string? capStyle, CapLocation location)
    {
        var houseId = new VersionedId(HouseBook.BookId, house.Version);
        if (book is not { } chosen)
            return new([.. house.Rows.Select(row => EffectiveRule.Of(row, houseId))], house.SewOrder, houseId);

        var bookId = new VersionedId(chosen.Book.Id, chosen.Version);
        RuleChange[] changes = [.. chosen.Book.Rules, .. Overrides(chosen.Book, customer, capStyle, location).SelectMany(over => over.Rules)];
        return new(
            [.. house.Rows.Select(row => EffectiveRule.Of(row, houseId).With(changes.Where(change => change.Rule == row.Rule), bookId))],
            Merged(house.SewOrder, chosen.Book.SewOrder),
            bookId);
    }

    private static IEnumerable<RuleOverride> Overrides(
        RuleBook book, string? customer, string? capStyle, CapLocation location) => book.Overrides.Where(over =>
            (over.Customer is null || over.Customer == customer)
            && (over.CapStyle is null || over.CapStyle == capStyle)
            && (over.Location is null || over.Location == location));

    private static OrderSettings Merged(OrderSettings house, OrderSettings? book) => new()
    {
        ExtraColorChanges = book?.ExtraColorChanges ?? house.ExtraColorChanges,
        ExtraTrims = book?.ExtraTrims ?? house.ExtraTrims,
        StartEndAtBottomCenter = book?.StartEndAtBottomCenter ?? house.StartEndAtBottomCenter,
        BetterBy = book?.BetterBy ?? house.BetterBy,
    };
}
