using System.Text.Json;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>Reads of a ticket that was refused what it can: whoever gets it back looks for the order.</summary>
internal static class TicketGlance
{
    private const int LongestOrderNumber = 64;

    /// <summary>Null: no ticket lies there, or it has no order number that can be read.</summary>
    public static string? OrderNumber(string folder, DropRow drop, int mostBytes)
    {
        var ticket = Drops.Read(drop).FirstOrDefault(file => DropScan.KindOf(file.Name) == FileKind.Ticket);
        if (ticket is null)
            return null;
        var file = new FileInfo(Path.Combine(folder, ticket.Name));
        if (!file.Exists || file.LinkTarget is not null || file.Length == 0 || file.Length > mostBytes)
            return null;
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(file.FullName));
            return json.RootElement.ValueKind == JsonValueKind.Object
                && json.RootElement.TryGetProperty("orderNumber", out var member)
                && member.ValueKind == JsonValueKind.String
                && member.GetString() is { Length: > 0 and <= LongestOrderNumber } number
                    ? number
                    : null;
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            return null;
        }
    }
}
