using System.Globalization;

namespace CapPrep.Service.HotFolder;

/// <summary>Where things lie in one hot folder. All of it is on one file system, so every move is a rename.</summary>
internal sealed record FolderPlaces(string Root)
{
    /// <summary>What others put in.</summary>
    public string Drop => Path.Combine(Root, "drop");

    /// <summary>What the keeper has taken, one folder per drop.</summary>
    public string Taken => Path.Combine(Root, "taken");

    /// <summary>What others take out.</summary>
    public string Answers => Path.Combine(Root, "answers");

    /// <summary>What was answered, by day.</summary>
    public string Kept => Path.Combine(Root, "kept");

    /// <summary>What could not be taken, with the reason.</summary>
    public string Returned => Path.Combine(Root, "returned");

    /// <summary>The file that says how things stand.</summary>
    public string Status => Path.Combine(Root, "folder-status.json");

    /// <summary>The name people know the folder by.</summary>
    public string Name => Path.GetFileName(Root);

    public IReadOnlyList<string> Folders => [Drop, Taken, Answers, Kept, Returned];

    public string TakenOf(string dropId) => Path.Combine(Taken, dropId);

    public string KeptOn(DateTimeOffset day) =>
        Path.Combine(Kept, day.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
}
