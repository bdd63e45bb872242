using System.Text.Json;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>How many drops are under way, and how many ended since midnight UTC.</summary>
internal sealed record FolderCounts(int Taken, int AnsweredToday, int ReturnedToday)
{
    public static async Task<FolderCounts> Of(AppDb db, string root, DateTimeOffset now, CancellationToken cancel)
    {
        var midnight = new DateTimeOffset(now.UtcDateTime.Date, TimeSpan.Zero);
        var rows = db.Drops.Where(row => row.Root == root);
        return new FolderCounts(
            await rows.CountAsync(row => row.State == DropState.Waiting || row.State == DropState.Taken, cancel),
            await rows.CountAsync(row => row.State == DropState.Answered && row.Ended >= midnight, cancel),
            await rows.CountAsync(row => row.State == DropState.Returned && row.Ended >= midnight, cancel));
    }
}

/// <summary>The file in the folder that says how things stand, for people and monitors that look nowhere else.</summary>
internal static class FolderStatus
{
    private static readonly string Me = $"{Environment.MachineName}/{Environment.ProcessId}";

    /// <summary>Rewritten through another name, so that nobody reads half of it.</summary>
    /// <param name="counts">Null: the database does not say.</param>
    public static void Write(FolderPlaces places, Round round, FolderCounts? counts)
    {
        var next = places.Status + ".part";
        File.WriteAllBytes(next, Bytes(round, counts));
        File.Move(next, places.Status, overwrite: true);
    }

    private static byte[] Bytes(Round round, FolderCounts? counts) => Json.Bytes(writer =>
    {
        writer.WriteStartObject();
        writer.WriteString("at", Json.Time(round.At));
        writer.WriteString("keeper", Me);
        if (round.LastScan is { } scan)
            writer.WriteString("lastScan", Json.Time(scan));
        writer.WriteStartArray("waiting");
        foreach (var file in round.Waiting)
            Write(writer, file);
        writer.WriteEndArray();
        if (counts is not null)
        {
            writer.WriteNumber("taken", counts.Taken);
            writer.WriteNumber("answeredToday", counts.AnsweredToday);
            writer.WriteNumber("returnedToday", counts.ReturnedToday);
        }

        writer.WriteStartArray("trouble");
        foreach (var line in round.Trouble)
            writer.WriteStringValue(line);
        writer.WriteEndArray();
        writer.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter writer, WaitingFile file)
    {
        writer.WriteStartObject();
        writer.WriteString("name", SafeName.Shown(file.Name));
        writer.WriteString("since", Json.Time(file.Since));
        writer.WriteString("for", SafeName.Shown(file.For));
        if (file.ReturnedAt is { } at)
            writer.WriteString("returnedAt", Json.Time(at));
        writer.WriteEndObject();
    }
}
