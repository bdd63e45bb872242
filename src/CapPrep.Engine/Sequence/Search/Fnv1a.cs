namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// FNV-1a over 64 bits, the same in every process. Source: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV
/// Non-Cryptographic Hash Algorithm" (offset basis 14695981039346656037, prime 1099511628211).
/// </summary>
internal static class Fnv1a
{
    internal const ulong Basis = 14695981039346656037;

    private const ulong Prime = 1099511628211;

    /// <summary>Eight bytes more, lowest first.</summary>
    internal static ulong Of(ulong hash, ulong value)
    {
        for (var shift = 0; shift < 64; shift += 8)
            hash = unchecked((hash ^ (value >> shift & 0xFF)) * Prime);
        return hash;
    }

    internal static ulong Of(ulong hash, long value) => Of(hash, unchecked((ulong)value));

    /// <summary>The bytes of an ASCII word.</summary>
    internal static ulong Of(ReadOnlySpan<byte> word)
    {
        var hash = Basis;
        foreach (var value in word)
            hash = unchecked((hash ^ value) * Prime);
        return hash;
    }
}
