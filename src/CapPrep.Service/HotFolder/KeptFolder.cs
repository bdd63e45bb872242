using System.Globalization;

namespace CapPrep.Service.HotFolder;

/// <summary>Takes away what was kept long enough.</summary>
internal static class KeptFolder
{
    /// <param name="keepDays">0: nothing ever goes.</param>
    public static void Clear(FolderPlaces places, int keepDays, DateTimeOffset now)
    {
        if (keepDays == 0)
            return;
        var oldest = DateOnly.FromDateTime(now.UtcDateTime).AddDays(-keepDays);
        foreach (var folder in Directory.EnumerateDirectories(places.Kept).Order(StringComparer.Ordinal).ToArray())
        {
            if (DateOnly.TryParseExact(Path.GetFileName(folder), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day < oldest)
                Directory.Delete(folder, recursive: true);
        }
    }
}
