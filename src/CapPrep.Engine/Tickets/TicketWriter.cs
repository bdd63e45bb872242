using System.Buffers;
using System.Text.Json;

namespace CapPrep.Engine.Tickets;

/// <summary>Writes a ticket in its one canonical form, which the fingerprint of a request is made of.</summary>
public static class TicketWriter
{
    /// <summary>
    /// The ticket as read, without white space: members in one fixed order, absent ones left out, numbers in their
    /// shortest form that reads back the same, texts with everything but ASCII escaped, <see cref="Ticket.Echo"/>
    /// byte for byte.
    /// </summary>
    public static byte[] Canonical(Ticket ticket)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes))
        {
            writer.WriteStartObject();
            TicketMemberWriter.Write(writer, ticket);
            Echo(writer, ticket.Echo);
            writer.WriteEndObject();
        }

        return bytes.WrittenSpan.ToArray();
    }

    private static void Echo(Utf8JsonWriter writer, ReadOnlyMemory<byte>? echo)
    {
        if (echo is not { } json)
            return;
        writer.WritePropertyName("echo");
        writer.WriteRawValue(json.Span);
    }
}
