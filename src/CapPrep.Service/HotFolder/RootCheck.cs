using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.HotFolder;

/// <summary>
/// Looks at the hot folders before the service starts, makes the folders inside, and tries the one thing everything
/// rests on: that a rename from each to each is a rename.
/// </summary>
internal static class RootCheck
{
    /// <summary>One line for each folder that cannot be used; none in a process without the role.</summary>
    public static async Task<IReadOnlyList<string>> Faults(AppDb db, Settings settings, CancellationToken cancel)
    {
        if (!settings.Has(Role.Folder))
            return [];
        var shops = await db.Shops.Select(row => row.Shop).ToArrayAsync(cancel);
        return
        [
            .. settings.HotFolders.Select((folder, i) => (At: $"{SettingsReader.Section}:HotFolders:{i}", Folder: folder))
                .SelectMany(row => OfShop(row.At, row.Folder.Shop, shops).Concat(OfRoot(row.At, row.Folder.Root))),
        ];
    }

    private static IEnumerable<string> OfShop(string at, string shop, string[] shops)
    {
        if (!shops.Contains(shop))
            yield return $"{at}:Shop is '{shop}', which is no shop; allowed: {string.Join(", ", shops.Order(StringComparer.Ordinal))}. A shop comes into being with its first key: capprep key add --shop {shop} --scopes submit --name NAME.";
    }

    private static IEnumerable<string> OfRoot(string at, string root)
    {
        if (!Directory.Exists(root))
            return [$"{at}:Root is '{root}', which is not there; make the folder, or mount it, and let this account write to it."];
        try
        {
            Try(new FolderPlaces(root));
            return [];
        }
        catch (UnauthorizedAccessException)
        {
            return [$"{at}:Root is '{root}', which this account may not write to; give it the right to make, rename and delete files there and in all folders inside."];
        }
        catch (IOException fault)
        {
            return [$"{at}:Root is '{root}', in which files cannot be made and renamed ({fault.Message}); drop, taken, answers, kept and returned must be plain folders of one file system that this account may write to."];
        }
    }

    private static void Try(FolderPlaces places)
    {
        foreach (var folder in places.Folders)
            Directory.CreateDirectory(folder);
        var probe = $".probe-{Guid.NewGuid():N}";
        var at = Path.Combine(places.Drop, probe);
        Directory.CreateDirectory(at);
        foreach (var folder in places.Folders.Skip(1))
        {
            var next = Path.Combine(folder, probe);
            Directory.Move(at, next);
            at = next;
        }

        File.WriteAllBytes(Path.Combine(at, "probe"), [0]);
        Directory.Delete(at, recursive: true);
        var status = $"{places.Status}.{probe}";
        File.WriteAllBytes(status, [0]);
        File.Delete(status);
    }
}
