using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Access;

/// <summary>Thrown at start when nobody could ever call this service.</summary>
internal sealed class NoKeyException() : Exception(
    "There is no API key in this database and CapPrep:Access:ManageKey (or ManageKeyFile) is not set. "
    + "Set one made by 'capprep key new', or run 'capprep key add --shop main --scopes manage,operate --name first' on this database.");

/// <summary>Sees to it that there is a first key.</summary>
internal sealed partial class KeyBootstrap(AppDb db, KeyDesk desk, Settings settings, ILogger<KeyBootstrap> log)
{
    /// <summary>Name of the file that holds the first key of an embedded installation.</summary>
    public const string FirstKeyFile = "first-manage-key";

    public async Task Run(CancellationToken cancel)
    {
        if (settings.Access.ManageKey is { } given)
        {
            await AddGiven(given, cancel);
            return;
        }

        if (await db.Keys.AnyAsync(cancel))
            return;
        if (settings.Database.Provider != DatabaseProvider.Sqlite)
            throw new NoKeyException();
        await AddFirst(cancel);
    }

    private async Task AddGiven(string given, CancellationToken cancel)
    {
        var hash = KeyForm.Hash(given);
        if (await db.Keys.AnyAsync(key => key.Hash == hash, cancel))
            return;
        try
        {
            await desk.Add(given, ShopScope.Main, "from-settings", [Scopes.Manage, Scopes.Operate], null, cancel);
        }
        catch (DbUpdateException)
        {
            // Another process of this installation stored it in the same moment: the unique hash decided.
            if (!await db.Keys.AnyAsync(key => key.Hash == hash, cancel))
                throw;
        }
    }

    private async Task AddFirst(CancellationToken cancel)
    {
        var path = Path.Combine(settings.DataFolder, FirstKeyFile);
        var key = KeyForm.New();
        File.Delete(path);
        OwnerFile.Write(path, key);
        await desk.Add(key, ShopScope.Main, "first", Scopes.All, null, cancel);
        FirstKeyWritten(log, path);
    }

    [LoggerMessage(1, LogLevel.Information, "The first API key was made; it stands in {Path}")]
    private static partial void FirstKeyWritten(ILogger log, string path);
}
