using System.Globalization;

namespace CapPrep.Service.Storage;

/// <summary>Thrown when another service process holds the data folder.</summary>
internal sealed class DataFolderInUseException(string folder, string holder)
    : Exception($"The data folder {folder} belongs to the service process {holder}. One process has it at a time; use PostgreSQL for more.");

/// <summary>
/// With SQLite a data folder belongs to one service process, which holds <c>service.lock</c> open exclusively.
/// The file names the holder's process id for people; the lock itself is the operating system's and ends with the
/// process, however it ends.
/// </summary>
internal sealed class DataFolderLock : IDisposable
{
    private readonly FileStream _file;

    private DataFolderLock(FileStream file) => _file = file;

    public static DataFolderLock Take(string dataFolder)
    {
        var path = Path.Combine(dataFolder, "service.lock");
        try
        {
            var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            WriteHolder(file, path);
            return new DataFolderLock(file);
        }
        catch (IOException)
        {
            throw new DataFolderInUseException(dataFolder, Holder(path));
        }
    }

    public void Dispose() => _file.Dispose();

    // The lock keeps other processes from opening the file, so the holder's id lies beside it.
    private static void WriteHolder(FileStream file, string path)
    {
        file.SetLength(0);
        File.WriteAllText(path + ".holder", Environment.ProcessId.ToString(CultureInfo.InvariantCulture));
    }

    private static string Holder(string path)
    {
        try
        {
            return File.ReadAllText(path + ".holder").Trim();
        }
        catch (IOException)
        {
            return "(unknown)";
        }
    }
}
