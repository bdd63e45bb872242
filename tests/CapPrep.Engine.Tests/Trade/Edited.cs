using System.Text;
using System.Text.Json.Nodes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tests.Trade;

/// <summary>Bodies that are right but for one edit.</summary>
internal static class Edited
{
    public static ReadOnlyMemory<byte> Style(string id = "six-panel-structured-mid") =>
        Embedded.StarterCatalog.CapStyles.Single(style => style.Id == id).Bytes;

    public static ReadOnlyMemory<byte> Frame => Embedded.StarterCatalog.CapFrames.Single(frame => frame.Id == "wide-270").Bytes;

    public static ReadOnlyMemory<byte> Machine => Embedded.StarterCatalog.Machines.Single(machine => machine.Id == "eight-head").Bytes;

    public static ReadOnlyMemory<byte> Station => Embedded.StarterCatalog.FramingStations.Single(station => station.Id == "gauge-1").Bytes;

    public static ReadOnlyMemory<byte> Shop => Embedded.StarterCatalog.Shop.Bytes;

    public static ReadOnlyMemory<byte> Json(string json) => Encoding.UTF8.GetBytes(json);

    /// <summary>The body with the member at <paramref name="pointer"/> replaced or added.</summary>
    public static ReadOnlyMemory<byte> With(this ReadOnlyMemory<byte> body, string pointer, string json)
    {
        var (root, parent, name) = Find(body, pointer);
        if (parent is JsonArray array)
            array[int.Parse(name)] = JsonNode.Parse(json);
        else
            parent[name] = JsonNode.Parse(json);
        return Json(root.ToJsonString());
    }

    public static ReadOnlyMemory<byte> Without(this ReadOnlyMemory<byte> body, string pointer)
    {
        var (root, parent, name) = Find(body, pointer);
        parent.AsObject().Remove(name).ShouldHaveBeenThere(pointer);
        return Json(root.ToJsonString());
    }

    private static (JsonNode Root, JsonNode Parent, string Name) Find(ReadOnlyMemory<byte> body, string pointer)
    {
        var root = JsonNode.Parse(body.Span)!;
        var steps = pointer.Split('/')[1..].Select(step => step.Replace("~1", "/").Replace("~0", "~")).ToArray();
        var parent = steps[..^1].Aggregate(root, (node, step) => node is JsonArray array ? array[int.Parse(step)]! : node[step]!);
        return (root, parent, steps[^1]);
    }

    private static void ShouldHaveBeenThere(this bool removed, string pointer)
    {
        if (!removed)
            throw new ArgumentException($"There is no {pointer} to remove.");
    }
}
