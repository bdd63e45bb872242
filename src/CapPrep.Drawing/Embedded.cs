using System.Reflection;

namespace CapPrep.Drawing;

/// <summary>Fonts and texts that travel inside this assembly.</summary>
internal static class Embedded
{
    public static byte[] Bytes(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly lacks its resource {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    public static bool Holds(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceInfo(name) is not null;
}
