namespace CapPrep.Engine.Tests.Trade;

/// <summary>The example bodies that the API document shows.</summary>
internal static class Examples
{
    public static ReadOnlyMemory<byte> Bytes(string name) => File.ReadAllBytes(Path.Combine(Root(), "openapi", "examples", name));

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "CapPrep.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
