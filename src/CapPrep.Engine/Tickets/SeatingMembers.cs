using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class SeatingMembers
{
    /// <summary>Null when no member is given, which says as much as no seating at all.</summary>
    internal static TicketSeating? Read(ObjectReader reader)
    {
        var seating = new TicketSeating
        {
            By = reader.Choice("by", Words<SeatingBase>.Standard),
            CenterBy = reader.Choice("centerBy", Words<SeatingCenter>.Standard),
            CenterXMm = reader.Number("centerXMm", -200, 200),
            BaseAboveBrimMm = reader.Number("baseAboveBrimMm", 0, 100),
            OffsetRightMm = reader.Number("offsetRightMm", -200, 200),
        };
        CheckCenter(seating.CenterBy, reader);
        return seating == new TicketSeating() ? null : seating;
    }

    private static void CheckCenter(SeatingCenter? centerBy, ObjectReader reader)
    {
        const string Name = "centerXMm";
        var pointer = reader.PointerTo(Name);
        if (reader.Faults.Under(reader.PointerTo("centerBy")))
            return;
        if (centerBy == SeatingCenter.X && !reader.Holds(Name))
            reader.Faults.Add(pointer, ViolationCodes.Required, "Centering by 'x' needs a field 'centerXMm'.");
        else if (centerBy != SeatingCenter.X && reader.Has(Name))
            reader.Faults.Add(pointer, ViolationCodes.Contradicts, "'centerXMm' goes with centerBy 'x' only.");
    }
}
