using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.HotFolder;

/// <summary>Writes a drop as JSON.</summary>
internal static class DropJson
{
    private const int LongestFolder = 60;
    private const int LongestName = 255;

    /// <summary>Most files that are listed.</summary>
    private const int MostFiles = 4;

    /// <param name="folder">Name of the hot folder.</param>
    /// <param name="path">Where the files lie now, from the root.</param>
    /// <param name="orderNumber">Null: none could be read.</param>
    public static byte[] Returned(DropRow drop, string folder, string path, string? orderNumber) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("id", drop.Id);
        writer.WriteString("folder", Cut(folder, LongestFolder));
        writer.WriteString("name", Cut(drop.Name, LongestName));
        writer.WriteString("state", Words<DropState>.Standard.Of(drop.State));
        writer.WriteStartArray("files");
        foreach (var file in Drops.Read(drop).Take(MostFiles))
        {
            writer.WriteStartObject();
            writer.WriteString("name", file.Name);
            writer.WriteNumber("bytes", file.Bytes);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteString("seen", Json.Time(drop.Seen));
        writer.WriteString("returned", Json.Time(drop.Ended!.Value));
        writer.WriteString("folderPath", path);
        if (orderNumber is not null)
            writer.WriteString("orderNumber", orderNumber);
        if (drop.Job is not null)
            writer.WriteString("job", drop.Job);
        writer.WritePropertyName("problem");
        writer.WriteRawValue(drop.Problem);
        writer.WriteEndObject();
    });

    private static string Cut(string text, int longest) => text.Length <= longest ? text : text[..longest];
}
