namespace CapPrep.FaultCorpus.Sewing;

/// <summary>How one digitizer works, and how one machine reads his tape.</summary>
internal sealed record Habits
{
    /// <summary>Consecutive jumps that cut the thread, 1 to 5.</summary>
    public int TrimJumps { get; init; } = 3;

    /// <summary>Every strand begins and ends with short stitches (fact row L44: 1 to 1.5 mm, never over 2).</summary>
    public bool Ties { get; init; } = true;

    public double TieStitch { get; init; } = 0.9;

    public int TieStitches { get; init; } = 3;

    /// <summary>The machine ties by itself.</summary>
    public bool MachineTies { get; init; }

    /// <summary>Bare thread between two parts that nobody sees, mm.</summary>
    public double WalkUpTo { get; init; } = 2.4;

    /// <summary>Short ways are floats instead of stitches.</summary>
    public bool Floats { get; init; }

    /// <summary>Needle points lie up to 0.1 mm off.</summary>
    public double JitterShare { get; init; }

    /// <summary>After a trim the last jump lands, and the stitch goes nowhere.</summary>
    public bool LandsByJump { get; init; } = true;

    /// <summary>Start and end of the tape lie at the bottom center, else in the middle of the box.</summary>
    public bool StartsAtBottom { get; init; }

    /// <summary>Left before right.</summary>
    public bool LeftFirst { get; init; }

    /// <summary>Habits that good tapes have.</summary>
    public static Habits Draw(Chance chance)
    {
        var trimJumps = chance.Of(3, 3, 3, 1, 2, 4, 5);
        return new()
        {
            TrimJumps = trimJumps,
            TieStitch = chance.Between(0.7, 1.2),
            TieStitches = chance.Between(3, 4),
            Floats = trimJumps > 1 && chance.Is(0.4),
            JitterShare = chance.Of(0, 0, 0.15, 0.4),
            LandsByJump = chance.Is(0.5),
            StartsAtBottom = chance.Is(0.4),
            LeftFirst = chance.Is(0.3),
        };
    }
}
