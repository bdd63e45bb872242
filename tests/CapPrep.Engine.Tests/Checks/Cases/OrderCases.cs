using CapPrep.Engine.Tests.Checks.OnBorders;
using CapPrep.Engine.Tests.Lettering;
using CapPrep.Engine.Tests.Sequence;
using CapPrep.TestKit.Tapes;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class OrderCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["order.tagline-first_pass"] = Job.Clean with { Tape = Sewn.LineAndBox(lineFirst: true) },
        ["order.tagline-first_fail"] = Job.Clean with { Tape = Sewn.LineAndBox(lineFirst: false) },
        ["order.bottom-up_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Base, Sewn.Middle, Sewn.Top) },
        ["order.bottom-up_fail"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Top, Sewn.Middle, Sewn.Base) },
        ["order.center-out_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Center, Sewn.Right, Sewn.Left) },
        ["order.center-out_fail"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Left, Sewn.Right, Sewn.Center) },
        ["order.text-line_pass"] = Sentence.Joined with { Tape = Sentence.Tape(Sentence.Text.CenterOut()) },
        ["order.text-line_fail"] = Sentence.Joined,
        ["order.not-settled_pass"] = Job.Clean with { Tape = Sewn.Trimmed(Sewn.Top, Sewn.Middle, Sewn.Base) },
        ["order.not-settled_fail"] = Job.Clean with { Tape = RandomDesign.Of(1440).Draft.ToTape("TEST") },
        ["shift.disagrees_pass"] = Job.Clean with { Tape = RandomDesign.Of(0).Draft.ToTape("TEST") },
        ["shift.disagrees_fail"] = Job.Clean with { Tape = RandomDesign.Of(101).Draft.ToTape("TEST") },
        ["order.across-seam_pass"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: false)),
        ["order.across-seam_fail"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: true)),
        ["order.rows-downward_pass"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: false)),
        ["order.rows-downward_fail"] = SeamCases.OnFrame(draft => draft.FromTop(new(-210, 100, 210, 200))),
        ["order.ring_pass"] = BorderDrafts.Job(draft => draft.Filled(new(-100, 100, 100, 200)).ColorStop().Border(new(-300, 0, 300, 380), 20, 20)),
        ["order.ring_fail"] = BorderDrafts.Job(draft => draft.Filled(new(-100, 100, 100, 200)).ColorStop().Border(new(-310, 0, 310, 380), 20, 20)),
        ["order.back-again_pass"] = ThreeTurns("#1B2A5C", "#C8102E", "#FFFFFF"),
        ["order.back-again_fail"] = ThreeTurns("#1B2A5C", "#C8102E", "#1B2A5C"),
    };

    /// <summary>Three boxes side by side, in three colors of thread.</summary>
    private static Job ThreeTurns(params string[] colors) => BorderDrafts
        .Job(draft => draft.Filled(new(-50, 0, 50, 100)).ColorStop().Filled(new(100, 0, 200, 100)).ColorStop().Filled(new(-200, 0, -100, 100)))
        .Colored(colors);
}
