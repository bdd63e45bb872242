using CapPrep.Engine.Tickets;

namespace CapPrep.Drawing.Tests.Builders;

internal static class SomeTicket
{
    public static ResolvedTicket Resolved() => new()
    {
        Received = new Ticket
        {
            OrderNumber = "HRC-2201",
            CapStyle = "six-panel-mid",
            Quantity = 48,
            Blanks = 50,
            Customer = "heron-rowing",
            CapColor = new NamedColor("Stone", "#D8D2C4"),
            Threads =
            [
                Some.Thread(1, "Sand", "#D9C7A0", "1128"),
                Some.Thread(2, "Harbor blue", "#1F3F6E", "1242"),
                Some.Thread(3, "Heron gray", "#6E7478", "1011"),
            ],
        },
        Line = "1",
        Location = CapLocation.Front,
        Design = "Heron crest",
        CapStyle = "six-panel-mid",
        Machine = "eight-head",
        CapFrame = "wide",
        FramingStation = "gauge-1",
        RuleBook = "house",
        SeatBy = SeatingBase.Box,
        CenterBy = SeatingCenter.Box,
        CenterXMm = 0,
        BaseAboveBrimMm = null,
        OffsetRightMm = 0,
        Technique = Technique.Flat,
        TapeIs = TapeOrientation.Upright,
        SewOrderMode = SewOrderMode.IfBetter,
        AllowExtraColorChanges = 0,
        Inspection = InspectionPlan.Loads,
        ThreadWeightWt = 40,
        Defaulted = [],
    };
}
