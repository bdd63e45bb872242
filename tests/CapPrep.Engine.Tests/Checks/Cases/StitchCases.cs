using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnStitches;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class StitchCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["stitch.short_pass"] = Job.Clean,
        ["stitch.short_fail"] = RuleCases.Drafted(draft => draft.Run(3, new TapePoint(0, 0), new TapePoint(30, 0))),
        ["stitch.long_pass"] = RuleCases.Drafted(draft => draft.Run(70, new TapePoint(0, 0), new TapePoint(70, 0))),
        ["stitch.long_fail"] = RuleCases.Drafted(draft => draft.Run(71, new TapePoint(0, 0), new TapePoint(71, 0))),
        ["stitch.dense_pass"] = RuleCases.Drafted(draft => draft.Grid(4, 4, 60, 60)),
        ["stitch.dense_fail"] = RuleCases.Drafted(draft => draft.Grid(3, 4, 60, 60)),
    };
}
