namespace CapPrep.FaultCorpus;

/// <summary>Random draws that a seed repeats (SplitMix64, G. Steele, D. Lea, C. Flood, 2014; constants from memory).</summary>
public sealed class Chance
{
    private ulong _state;

    /// <param name="family">Name of what is drawn; every family has its own stream.</param>
    /// <param name="number">Number inside the family.</param>
    public Chance(string family, int number)
    {
        _state = family.Aggregate(0xcbf29ce484222325UL, (hash, letter) => (hash ^ letter) * 0x100000001b3UL);
        _state ^= (ulong)number * 0x9e3779b97f4a7c15UL;
        Next();
    }

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Share() => (Next() >> 11) * (1.0 / (1UL << 53));

    public double Between(double low, double high) => low + (Share() * (high - low));

    /// <summary>Both ends included.</summary>
    public int Between(int low, int high) => low + (int)(Share() * (high - low + 1));

    public bool Is(double share) => Share() < share;

    public T Of<T>(params IReadOnlyList<T> choices) => choices[Between(0, choices.Count - 1)];

    /// <summary>Spread evenly over the powers between two values above 0.</summary>
    public double Log(double low, double high) => low * Math.Pow(high / low, Share());

    /// <summary>Some of the choices, each once, in the order drawn.</summary>
    public IReadOnlyList<T> Some<T>(int count, IReadOnlyList<T> choices)
    {
        var left = choices.ToList();
        var drawn = new List<T>();
        while (drawn.Count < count && left.Count > 0)
        {
            var index = Between(0, left.Count - 1);
            drawn.Add(left[index]);
            left.RemoveAt(index);
        }

        return drawn;
    }

    private ulong Next()
    {
        _state += 0x9e3779b97f4a7c15UL;
        var mixed = (_state ^ (_state >> 30)) * 0xbf58476d1ce4e5b9UL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebUL;
        return mixed ^ (mixed >> 31);
    }
}
