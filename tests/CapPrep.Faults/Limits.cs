namespace CapPrep.FaultCorpus;

/// <summary>What the trade takes for right, typed from the fact table's rows and the shop's own limits (house). mm unless said.</summary>
internal static class Limits
{
    // L02, section 12; C11 for the note; 4.0: house.
    internal const double LetterWarn = 5.0;
    internal const double LetterNote = 6.4;
    internal const double LetterHold = 4.0;

    // L18: letters of single lines.
    internal const double RunLetter = 3.0;

    // L03: finer thread sews a quarter smaller.
    internal const double FineThread = 0.75;

    // L14, L15.
    internal const double Counter = 0.9;
    internal const double LetterGap = 0.5;

    // L12, section 12; 0.7: house.
    internal const double ColumnWarn = 1.0;

    // Section 12 for the note; warn: house.
    internal const double SatinNote = 7;
    internal const double SatinWarn = 9;

    // House, about L35 and L36.
    internal const double PitchLow = 0.33;
    internal const double PitchHigh = 0.55;

    // L37 and house.
    internal const double BorderOverlap = 0.8;
    internal const double BorderThin = 1.5;
    internal const double BorderLateWidth = 2.0;
    internal const double BorderLateOverlap = 1.0;

    // C13: no source; house.
    internal const double SeamColumn = 3;
    internal const double SeamColumnNear = 1.5;
    internal const double SeamTextNear = 1.0;
    internal const double SeamJoint = 1.0;
    internal const double SeamUnder = 1.5;

    // F03, F04, F16, F22, F23 for the mid-crown style; strap: house.
    internal const double HeightWarn = 55;
    internal const double HeightHold = 63.5;
    internal const double WidthWarn = 127;
    internal const double WidthHold = 150;
    internal const double BrimWarn = 10;
    internal const double BrimHold = 8;

    // L46; pitch: house.
    internal const double FoamNarrow = 5.1;
    internal const double FoamNarrowHold = 3.5;
    internal const double FoamWide = 12.7;
    internal const double FoamGap = 1.8;
    internal const double FoamPitchLow = 0.15;
    internal const double FoamPitchHigh = 0.25;

    /// <summary>What two measurements of one length may differ by.</summary>
    internal static double Error(double limit) => Math.Max(0.1, 0.03 * limit);

    /// <summary>How far from the limit a planted or a clean value lies, as a share of it.</summary>
    internal static double Beyond(Chance chance, double limit, double most = 0.5) =>
        chance.Log(Math.Min(2 * Error(limit) / limit, most * 0.95), most);
}
