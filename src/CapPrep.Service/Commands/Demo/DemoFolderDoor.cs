using System.Text.Json;

namespace CapPrep.Service.Commands.Demo;

/// <summary>The hot folder as a shop's scripts use it: they put pairs in and wait for what comes out.</summary>
internal sealed class DemoFolderDoor(DemoFolders folders, CancellationToken stopping)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private string Drop => Path.Combine(folders.Hot, "drop");

    private string Answers => Path.Combine(folders.Hot, "answers");

    private string Returned => Path.Combine(folders.Hot, "returned");

    /// <summary>Puts all pairs in and gives, for each, the folder that came out; none after a minute.</summary>
    public async Task<IReadOnlyList<(DemoOrder Order, string? Folder)>> Send(IReadOnlyList<DemoOrder> orders)
    {
        foreach (var order in orders)
        {
            await File.WriteAllBytesAsync(Path.Combine(Drop, order.Stem + ".dst"), order.Tape, stopping);
            await File.WriteAllTextAsync(Path.Combine(Drop, order.Stem + ".json"), order.Ticket, stopping);
        }

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        limit.CancelAfter(Patience);
        while (orders.Any(order => FolderOf(order) is null) && !limit.IsCancellationRequested)
            await Task.Delay(200, stopping);
        return [.. orders.Select(order => (order, FolderOf(order)))];
    }

    /// <summary>True when the pair came back as it was, with the reason beside it.</summary>
    public bool IsReturned(string folder) => Path.GetDirectoryName(folder) == Returned;

    /// <summary>What an answer or a returned pair says.</summary>
    public async Task<JsonElement> Read(string folder)
    {
        var file = Path.Combine(folder, IsReturned(folder) ? "reason.json" : "answer.json");
        return JsonSerializer.Deserialize<JsonElement>(await File.ReadAllBytesAsync(file, stopping));
    }

    private string? FolderOf(DemoOrder order) => new[] { Answers, Returned }
        .SelectMany(folder => Directory.EnumerateDirectories(folder, order.Stem + ".*"))
        .FirstOrDefault();
}
