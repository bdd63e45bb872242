using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tickets;

internal static class SizeMembers
{
    internal static ExpectedSize Read(ObjectReader reader)
    {
        if (!reader.Holds("widthMm") && !reader.Holds("heightMm"))
            reader.Faults.Add(reader.Pointer, ViolationCodes.Required, "A size needs 'widthMm', 'heightMm' or both.");
        return new ExpectedSize(reader.Number("widthMm", 1, 400), reader.Number("heightMm", 1, 400));
    }
}
