using System.Text.Json;

namespace CapPrep.Engine.Tickets;

/// <summary>
/// Writes a resolved ticket: the members of a ticket in their usual order, those filled in among them, then
/// <c>threadWeightWt</c> (for threads that name no weight) and <c>defaulted</c>, the pointers of what was filled
/// in. The caller's own JSON is not part of it.
/// </summary>
public static class ResolvedTicketWriter
{
    /// <summary>Writes one object at the place where the writer stands.</summary>
    public static void Write(Utf8JsonWriter writer, ResolvedTicket resolved)
    {
        writer.WriteStartObject();
        TicketMemberWriter.Write(writer, Defaults.Filled(resolved));
        writer.WriteNumber("threadWeightWt", resolved.ThreadWeightWt);
        WriteDefaulted(writer, resolved.Defaulted);
        writer.WriteEndObject();
    }

    private static void WriteDefaulted(Utf8JsonWriter writer, IReadOnlyList<string> pointers)
    {
        writer.WriteStartArray("defaulted");
        foreach (var pointer in pointers)
            writer.WriteStringValue(pointer);
        writer.WriteEndArray();
    }
}
