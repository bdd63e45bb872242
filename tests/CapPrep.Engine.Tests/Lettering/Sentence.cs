using CapPrep.Engine.Drafting;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes.Letters;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>A line of 12 small letters, 54 mm wide, about the seam.</summary>
internal static class Sentence
{
    internal static readonly Text Text = new("harbor bridge") { XHeight = 45, StrokeWidth = 10, Gap = 14, Space = 20 };

    /// <summary>Sewn from the left end to the right one, the thread led from letter to letter.</summary>
    internal static Job Joined => Job.Clean with { Tape = Tape(Text with { Join = LetterJoin.Thread }) };

    internal static Job Trimmed => Job.Clean with { Tape = Tape(Text) };

    internal static Tape Tape(params Text[] lines)
    {
        var draft = new Draft();
        foreach (var line in lines)
            line.Sew(draft);
        return draft.ToTape("TEST");
    }
}
