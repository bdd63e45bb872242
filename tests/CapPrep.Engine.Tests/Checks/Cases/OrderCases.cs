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
        ["order.across-seam_pass"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: false)),
        ["order.across-seam_fail"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: true)),
        ["order.rows-downward_pass"] = SeamCases.OnFrame(draft => draft.Filled(new(-210, 100, 210, 200), upright: false)),
        ["order.rows-downward_fail"] = SeamCases.OnFrame(draft => draft.FromTop(new(-210, 100, 210, 200))),
    };
}
