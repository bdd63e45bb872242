namespace CapPrep.Engine.Tapes;

/// <summary>How often something occurs and the first record where it does.</summary>
internal struct Tally
{
    public int Count { get; private set; }

    /// <summary>-1 while the count is 0.</summary>
    public int First { get; private set; }

    public static Tally Empty => new() { First = -1 };

    public void Note(int record)
    {
        if (Count++ == 0)
            First = record;
    }
}
