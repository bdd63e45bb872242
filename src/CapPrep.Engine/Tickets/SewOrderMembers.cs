using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class SewOrderMembers
{
    /// <summary>Null when no member is given, which says as much as no sew order at all.</summary>
    internal static TicketSewOrder? Read(ObjectReader reader)
    {
        var order = new TicketSewOrder
        {
            Mode = reader.Choice("mode", Words<SewOrderMode>.Standard),
            AllowExtraColorChanges = reader.Integer("allowExtraColorChanges", 0, 20),
            AllowExtraTrims = reader.Integer("allowExtraTrims", 0, 200),
            ExtraMinutes = reader.Number("extraMinutes", 0, 600),
        };
        return order == new TicketSewOrder() ? null : order;
    }
}
