using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Storage;

/// <summary>The folder in which a process keeps what it keeps.</summary>
internal static class DataFolder
{
    /// <summary>Makes the folder; with SQLite also takes it for this process. Null: nothing to hold.</summary>
    /// <exception cref="DataFolderInUseException">Another process has it.</exception>
    public static DataFolderLock? Take(Settings settings)
    {
        Directory.CreateDirectory(settings.DataFolder);
        return settings.Database.Provider == DatabaseProvider.Sqlite ? DataFolderLock.Take(settings.DataFolder) : null;
    }
}
