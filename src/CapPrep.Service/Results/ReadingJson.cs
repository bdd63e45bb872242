using System.Text.Json;
using CapPrep.Engine;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Reading;

namespace CapPrep.Service.Results;

/// <summary>Writes how well the design could be read, and where it could be something else.</summary>
internal static class ReadingJson
{
    public static void Write(Utf8JsonWriter writer, Preparation preparation)
    {
        var reading = preparation.Reading;
        writer.WriteStartObject("reading");
        writer.Share("stitchesAssignedShare", reading.AssignedShare);
        writer.WriteStartArray("doubtful");
        foreach (var piece in preparation.Doubtful)
        {
            writer.WriteStartObject();
            writer.WriteNumber("element", piece.Element);
            writer.WriteString("readAs", Words<StitchClass>.Standard.Of(piece.ReadAs));
            if (piece.BoxMm is { } box)
                writer.Box("boxMm", box);
            writer.WriteStartObject("stitches");
            writer.WriteNumber("first", piece.Stitches.First);
            writer.WriteNumber("last", piece.Stitches.Last);
            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("limits");
        foreach (var limit in reading.Limits)
            writer.WriteStringValue(Words<ReadingLimit>.Standard.Of(limit));
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
