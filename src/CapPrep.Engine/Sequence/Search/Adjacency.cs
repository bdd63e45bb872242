namespace CapPrep.Engine.Sequence.Search;

/// <summary>What it takes to sew one element right behind another of the same color block.</summary>
internal enum Adjacency : byte
{
    /// <summary>The thread goes on.</summary>
    Joined,

    /// <summary>A trim.</summary>
    Trimmed,

    /// <summary>It cannot be done on this machine.</summary>
    Never,
}
