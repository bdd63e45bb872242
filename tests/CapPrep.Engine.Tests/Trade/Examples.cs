using CapPrep.TestKit;

namespace CapPrep.Engine.Tests.Trade;

/// <summary>The example bodies that the API document shows.</summary>
internal static class Examples
{
    public static ReadOnlyMemory<byte> Bytes(string name) =>
        File.ReadAllBytes(Path.Combine(Repository.Root, "openapi", "examples", name));
}
