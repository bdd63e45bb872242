namespace CapPrep.FaultCorpus.Letters;

/// <summary>Texts to sew; invented names.</summary>
internal static class Names
{
    /// <summary>Five letters whose middle one has no upright stroke near its own middle.</summary>
    internal static readonly IReadOnlyList<string> Odd =
        ["LIONS", "CROWN", "STONE", "STORM", "FROST", "SCOUT", "BISON", "MASON", "TROUT", "CLOUD", "GROVE", "BROOK"];

    internal static readonly IReadOnlyList<string> Even =
        ["HARBOR", "SUMMIT", "TIMBER", "ANCHOR", "FALCON", "CEDARS", "RIVERS", "PIRATE", "WOLF", "BEAR", "HAWK", "LAKE", "COVE", "MESA"];

    /// <summary>Two words of about one length.</summary>
    internal static readonly IReadOnlyList<string> Pairs =
        ["HARBOR LIONS", "NORTH SHORE", "CEDAR CREEK", "TROUT CLUB", "STONE RIDGE", "RIVER CREW", "EST 1987", "LAKE HOUSE", "CAMP ALDER"];

    /// <summary>Without letters that have small openings.</summary>
    internal static readonly IReadOnlyList<string> OpenPairs =
        ["NORTH COVE", "CLUB COLT", "HILL COUNTY", "TROUT CLUB", "SOUTH LOCH", "MILL HOLLOW"];

    internal static readonly IReadOnlyList<string> Lower = ["harbor", "summit", "alder", "coast", "brooks", "cabin", "willow", "meadow"];

    internal static readonly IReadOnlyList<string> Monograms = ["HL", "CR", "NS", "KD", "BT", "RW", "JM", "SP"];
}
