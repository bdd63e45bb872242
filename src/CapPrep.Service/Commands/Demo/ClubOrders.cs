using System.Text.Json.Nodes;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The five designs with the tickets they come with.</summary>
internal static class ClubOrders
{
    public const string Refused = "refused";

    private static readonly Thread Sand = new("Sand", "#D9C7A0");
    private static readonly Thread Red = new("Red", "#B3202A");
    private static readonly Thread White = new("White", "#F7F7F2");
    private static readonly Thread Gold = new("Gold", "#C9972B");

    /// <summary>All five for one door; each is an order of its own. They are written beside the demo's other files too.</summary>
    public static IReadOnlyList<DemoOrder> Through(DemoDoor door, DemoFolders folders)
    {
        DemoOrder[] orders =
        [
            New(1, door, "Right", ClubDesigns.Right(), "sewAsReceived", [Sand, Red, White]),
            New(2, door, "Bottom line last", ClubDesigns.BottomLineLast(), "sewResequenced", [Red, White, Sand]),
            New(3, door, "Too tall", ClubDesigns.TooTall(), "returnToOrderDesk", [Sand, Red, White], aboveBrimMm: 4),
            New(4, door, "Crowded", ClubDesigns.Crowded(), "returnToDigitizer", [White, Sand, Gold, Red]),
            New(5, door, "Broken", ClubDesigns.Broken(), $"{Refused} tape-invalid", [Sand, Red, White]),
        ];
        foreach (var order in orders)
        {
            File.WriteAllBytes(Path.Combine(folders.Sent, order.Stem + ".dst"), order.Tape);
            File.WriteAllText(Path.Combine(folders.Sent, order.Stem + ".json"), order.Ticket);
        }

        return orders;
    }

    private static DemoOrder New(
        int number, DemoDoor door, string name, byte[] tape, string wanted, Thread[] threads, double? aboveBrimMm = null)
    {
        var ticket = new JsonObject
        {
            ["orderNumber"] = $"QH-{(door == DemoDoor.Http ? 100 : 200) + number}",
            ["capStyle"] = "six-panel-structured-mid",
            ["quantity"] = 48,
            ["design"] = $"Quayside Herons: {char.ToLowerInvariant(name[0])}{name[1..]}",
            ["capColor"] = new JsonObject { ["name"] = "Navy", ["color"] = "#1B2A5C" },
            ["threads"] = new JsonArray([.. threads.Select((thread, i) => thread.At(i + 1))]),
        };
        if (aboveBrimMm is { } height)
            ticket["seating"] = new JsonObject { ["baseAboveBrimMm"] = height };
        return new DemoOrder(name, door, $"{name.ToLowerInvariant().Replace(' ', '-')}-{door.ToString().ToLowerInvariant()}", tape, ticket.ToJsonString(), wanted);
    }

    private sealed record Thread(string Name, string Color)
    {
        public JsonObject At(int block) => new() { ["block"] = block, ["name"] = Name, ["color"] = Color };
    }
}
