namespace CapPrep.TestKit.Tapes;

/// <summary>
/// Random numbers that are the same on every system and in every version of the runtime. Source: G. L. Steele, D. Lea,
/// C. H. Flood, "Fast splittable pseudorandom number generators" (2014), SplitMix64.
/// </summary>
public sealed class Chance(ulong seed)
{
    private ulong _state = seed;

    public ulong Next()
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

    /// <summary>A number from <paramref name="least"/> to <paramref name="most"/>, both included.</summary>
    public int From(int least, int most) => least + (int)(Next() % (ulong)(most - least + 1));

    /// <summary>True so many times out of a hundred.</summary>
    public bool In100(int times) => From(1, 100) <= times;
}
