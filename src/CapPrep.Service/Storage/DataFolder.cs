using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Storage;

/// <summary>Thrown when the data folder cannot hold a database.</summary>
internal sealed class DataFolderUnfitException(string message) : Exception(message);

/// <summary>The folder in which a process keeps what it keeps.</summary>
internal static class DataFolder
{
    private static readonly string[] NetworkFormats = ["nfs", "nfs4", "cifs", "smb", "smb2", "smb3", "smbfs", "9p", "afs", "fuse.sshfs"];

    /// <summary>Makes the folder; with SQLite also takes it for this process. Null: nothing to hold.</summary>
    /// <exception cref="DataFolderInUseException">Another process has it.</exception>
    /// <exception cref="DataFolderUnfitException">It cannot be made, or lies on a network file system.</exception>
    public static DataFolderLock? Take(Settings settings)
    {
        var folder = settings.DataFolder;
        Make(folder);
        if (settings.Database.Provider != DatabaseProvider.Sqlite)
            return null;
        RefuseNetwork(folder, new DriveInfo(folder).DriveFormat);
        return DataFolderLock.Take(folder);
    }

    /// <summary>SQLite's write-ahead log needs one host, so a share is refused.</summary>
    internal static void RefuseNetwork(string folder, string format)
    {
        if (NetworkFormats.Contains(format, StringComparer.OrdinalIgnoreCase))
            throw new DataFolderUnfitException($"CapPrep:DataFolder is '{folder}', which lies on a network file system ({format}); allowed: a folder on a local disk.");
    }

    private static void Make(string folder)
    {
        try
        {
            if (OperatingSystem.IsWindows() || Directory.Exists(folder))
                Directory.CreateDirectory(folder);
            else
                Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new DataFolderUnfitException($"CapPrep:DataFolder is '{folder}', which cannot be made; allowed: a folder this account may write to.");
        }
    }
}
