using CsCheck;

namespace CapPrep.Engine.Tests;

/// <summary>The same samples in every run, for properties that hold for a share of all cases.</summary>
internal static class Fixed
{
    private const uint Stream = 1;

    internal static IEnumerable<T> Samples<T>(this Gen<T> any, int count)
    {
        for (ulong number = 0; number < (ulong)count; number++)
            yield return any.Generate(new PCG(Stream, number), null, out _);
    }
}
