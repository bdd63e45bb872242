using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Trade.Readers;

/// <summary>Reads the rows of the fact table.</summary>
internal static class FactReader
{
    internal static ReadResult<PublishedSources> Read(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, new Faults("body", "The fact table"), Table);

    private static PublishedSources? Table(ObjectReader reader)
    {
        reader.Require("rows");
        return new(reader.Objects("rows", 1, 1000, Row) ?? []);
    }

    private static FactRow? Row(ObjectReader reader)
    {
        reader.Require("row", "says", "grade");
        var row = new FactRow(
            reader.Text("row", 10) ?? "",
            reader.Text("says", 200) ?? "",
            reader.Word("grade", "A", "B", "C", "D", "X", "M") ?? "")
        {
            Title = reader.Text("title", 200),
            Publisher = reader.Text("publisher", 100),
            Year = reader.Integer("year", 1900, 2100),
            Url = reader.Text("url", 300),
        };
        if (row.IsPublished)
            reader.Require("title", "publisher", "url");
        return row;
    }
}
