namespace CapPrep.Engine.Sequence.Search;

/// <summary>
/// A stream of random numbers that is the same everywhere. Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable
/// pseudorandom number generators" (2014).
/// </summary>
internal struct SplitMix64(ulong seed)
{
    private ulong _state = seed;

    internal ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = _state;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }

    /// <summary>A number from 0 to <paramref name="bound"/> - 1.</summary>
    internal int Below(int bound) => (int)Math.BigMul(Next(), (ulong)bound, out _);
}
