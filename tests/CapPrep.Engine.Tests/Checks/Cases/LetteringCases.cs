using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.TestKit.Tapes.Letters;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.Cases;

/// <summary>Drafted lines of letters: whatever a rule says of them was found on the tape.</summary>
internal static class LetteringCases
{
    private static readonly TextToSew Lower = new("ocean surge") { XHeight = 66, StrokeWidth = 12 };

    private static readonly TextToSew Capitals = new("HARBOR LINE") { XHeight = 60, StrokeWidth = 12 };

    private static readonly TextToSew Long = new("HARBOR LINE DELUCE") { XHeight = 55 };

    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["place.turned_pass"] = Sewn(new TextToSew("the bold harbor")),
        ["place.turned_fail"] = Sewn(new TextToSew("the bold harbor") { TiltDegrees = 180 }),
        ["place.eye-center_pass"] = Sewn(Capitals),
        ["place.eye-center_fail"] = RuleCases.Drafted(draft => Sew(draft, Capitals).Trim(new(500, 60)).Run(20, new TapePoint(500, 60), new TapePoint(500, 84))),
        ["place.not-level_pass"] = Sewn(Capitals),
        ["place.not-level_fail"] = Sewn(Capitals with { TiltDegrees = 2 }),
        ["place.bow_pass"] = Sewn(Long),
        ["place.bow_fail"] = Sewn(Long).On("six-panel-structured-low"),
        ["seam.small-text_pass"] = OnOrigin(Small("HEEH")),
        ["seam.small-text_fail"] = OnOrigin(Small("HOTEL")),
        ["stitch.small-letter-trim_pass"] = Sewn(Lower with { XHeight = 55, Join = LetterJoin.Thread }),
        ["stitch.small-letter-trim_fail"] = Sewn(Lower with { XHeight = 55 }),
        ["lettering.small_pass"] = Sewn(Lower),
        ["lettering.small_fail"] = Sewn(Lower with { XHeight = 45, StrokeWidth = 8 }),
        ["lettering.counter_pass"] = Sewn(Lower),
        ["lettering.counter_fail"] = Sewn(Lower with { StrokeWidth = 22 }),
        ["lettering.gap_pass"] = Sewn(Lower),
        ["lettering.gap_fail"] = Sewn(Lower with { Gap = 2 }),
    };

    private static TextToSew Small(string text) => new(text) { XHeight = 40, StrokeWidth = 10 };

    private static Job Sewn(TextToSew line) => RuleCases.Drafted(draft => Sew(draft, line));

    private static Job OnOrigin(TextToSew line) => Sewn(line).Seating(new TicketSeating { CenterBy = SeatingCenter.Origin });

    private static Draft Sew(Draft draft, TextToSew line)
    {
        line.Sew(draft);
        return draft;
    }
}
