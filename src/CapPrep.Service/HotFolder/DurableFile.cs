namespace CapPrep.Service.HotFolder;

/// <summary>Files that must be whole when the rename behind them is seen, whatever happens to the machine.</summary>
internal static class DurableFile
{
    /// <summary>Writes a file and lets the disk say that it has it.</summary>
    public static async Task Write(string path, byte[] bytes, CancellationToken cancel)
    {
        await using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.Read);
        await file.WriteAsync(bytes, cancel);
        file.Flush(flushToDisk: true);
    }
}
