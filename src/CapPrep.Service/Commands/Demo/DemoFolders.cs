namespace CapPrep.Service.Commands.Demo;

/// <summary>Where one run of the demo keeps everything.</summary>
/// <param name="Root">A new folder among the temporary ones.</param>
/// <param name="Papers">Where cards and proofs go.</param>
internal sealed record DemoFolders(string Root, string Papers)
{
    /// <summary>The service's own.</summary>
    public string Data => Path.Combine(Root, "data");

    /// <summary>Tapes and tickets as they were sent.</summary>
    public string Sent => Path.Combine(Root, "sent");

    /// <summary>The hot folder.</summary>
    public string Hot => Path.Combine(Root, "hot");

    public string Log => Path.Combine(Root, "service.log");

    /// <param name="papers">Null: inside the new folder.</param>
    /// <exception cref="WrongCommandLineException">The folder for the papers cannot be made.</exception>
    public static DemoFolders Make(string? papers)
    {
        var root = Directory.CreateTempSubdirectory("capprep-demo-").FullName;
        var folders = new DemoFolders(root, papers is null ? Path.Combine(root, "papers") : Path.GetFullPath(papers));
        Directory.CreateDirectory(folders.Sent);
        Directory.CreateDirectory(folders.Hot);
        try
        {
            Directory.CreateDirectory(folders.Papers);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new WrongCommandLineException($"{folders.Papers} cannot be written to: {fault.Message}");
        }

        return folders;
    }
}
