namespace CapPrep.TestKit;

/// <summary>The files of this repository, as tests see them.</summary>
public static class Repository
{
    /// <summary>Full path of the folder that holds CapPrep.sln.</summary>
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    private static string Find(DirectoryInfo? folder)
    {
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "CapPrep.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds CapPrep.sln.");
    }
}
