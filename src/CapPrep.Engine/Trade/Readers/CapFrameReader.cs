using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade.Readers;

internal static class CapFrameReader
{
    internal static CapFrame? Read(ObjectReader reader, ReadOnlyMemory<byte> body)
    {
        reader.Require("id", "name", "fieldMm", "arcDegrees", "holds", "strapTopMm", "setsOwned", "locations", "sources");
        return new()
        {
            Id = reader.Id("id") ?? "",
            Name = reader.Text("name", 80) ?? "",
            FieldMm = reader.Object("fieldMm", Field)?.Box ?? default,
            ArcDegrees = reader.Number("arcDegrees", 0, 360) ?? 0,
            Holds = reader.Choice("holds", Words<FrameHold>.Standard) ?? default,
            StrapTopMm = reader.Number("strapTopMm", 0, 50) ?? 0,
            PostsXMm = reader.Numbers("postsXMm", 10, -400, 400),
            SidesHeldBelowMm = reader.Number("sidesHeldBelowMm", 0, 200),
            SetsOwned = reader.Integer("setsOwned", 0, 100) ?? 0,
            Numbers = reader.Texts("numbers", 1000, 10) ?? [],
            Gauge = reader.Text("gauge", 60),
            ForStyles = reader.Ids("forStyles", 0, 1000),
            Locations = reader.Choices<CapLocation>("locations", 1),
            Sources = reader.Sources(body),
        };
    }

    private static FieldBox? Field(ObjectReader reader)
    {
        reader.Require("left", "bottom", "right", "top");
        var left = reader.Number("left", -500, 500);
        var bottom = reader.Number("bottom", -100, 500);
        var right = reader.Number("right", -500, 500);
        var top = reader.Number("top", -100, 500);
        if (right <= left)
            reader.Contradicts("right", "The field's right edge is not to the right of its left edge.");
        if (top <= bottom)
            reader.Contradicts("top", "The field's top edge is not above its bottom edge.");
        return new(new BoxMm(left ?? 0, bottom ?? 0, right ?? 0, top ?? 0));
    }

    private sealed record FieldBox(BoxMm Box);
}
