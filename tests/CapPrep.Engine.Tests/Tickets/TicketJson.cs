using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Tickets;

/// <summary>Small tickets as JSON text: the least one, with members put over it.</summary>
internal static class TicketJson
{
    public const string Least = """{"orderNumber":"HL-1042","capStyle":"five-panel","quantity":48}""";

    /// <param name="members">Members without their braces; one that is there already is replaced.</param>
    public static string With(string members)
    {
        var ticket = JsonNode.Parse(Least)!.AsObject();
        foreach (var (name, value) in JsonNode.Parse($"{{{members}}}")!.AsObject())
            ticket[name] = value?.DeepClone();
        if (ticket.ContainsKey("capSku"))
            ticket.Remove("capStyle");
        return ticket.ToJsonString();
    }

    public static ReadResult<Ticket> Read(string json) => TicketReader.Read(Encoding.UTF8.GetBytes(json));

    /// <summary>The ticket, or an exception that tells why there is none.</summary>
    public static Ticket Ticket(string json)
    {
        var result = Read(json);
        return result.Value ?? throw new InvalidOperationException(string.Join("\n", result.Violations));
    }

    public static string Canonical(string json) => Encoding.UTF8.GetString(TicketWriter.Canonical(Ticket(json)));

    public static string Text(int length) => "\"" + new string('x', length) + "\"";

    public static string Array(int length, Func<int, string> item) =>
        "[" + string.Join(",", Enumerable.Range(1, length).Select(item)) + "]";
}
