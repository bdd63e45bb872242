using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class CapLotMembers
{
    internal static IReadOnlyList<CapLot>? Read(ObjectReader owner) =>
        owner.Objects("capLots", 1, TicketReader.MostLots, Lot);

    private static CapLot Lot(ObjectReader reader) => new()
    {
        CapSku = reader.Text("capSku", 60),
        CapColor = reader.Object("capColor", ColorMembers.Read),
        Sizes = reader.Objects("sizes", 1, TicketReader.MostLots, Size) ?? [],
        Quantity = Quantity(reader),
        Threads = ThreadMembers.Read(reader) ?? [],
    };

    private static LotSize Size(ObjectReader reader)
    {
        reader.Require("size");
        return new LotSize(reader.Text("size", 20) ?? "", Quantity(reader));
    }

    private static int Quantity(ObjectReader reader) =>
        reader.Require("quantity").Integer("quantity", 1, TicketReader.MostCaps) ?? 0;
}
