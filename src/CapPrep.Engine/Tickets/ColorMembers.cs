using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class ColorMembers
{
    internal static NamedColor Read(ObjectReader reader)
    {
        if (!reader.Holds("name") && !reader.Holds("color"))
            reader.Faults.Add(reader.Pointer, ViolationCodes.Required, "A cap color needs 'name', 'color' or both.");
        return new NamedColor(reader.Text("name", 60), reader.Color("color"));
    }
}
