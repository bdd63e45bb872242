using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnStitches;
using CapPrep.Engine.Tests.Checks.OnStitches.Layers;

namespace CapPrep.Engine.Tests.Checks.Cases;

internal static class StitchCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["stitch.short_pass"] = Job.Clean,
        ["stitch.short_fail"] = RuleCases.Drafted(draft => draft.Run(3, new TapePoint(0, 0), new TapePoint(30, 0))),
        ["stitch.long_pass"] = RuleCases.Drafted(draft => draft.Run(70, new TapePoint(0, 0), new TapePoint(70, 0))),
        ["stitch.long_fail"] = RuleCases.Drafted(draft => draft.Run(71, new TapePoint(0, 0), new TapePoint(71, 0))),
        ["stitch.column-narrow_pass"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 10, 100))),
        ["stitch.column-narrow_fail"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 8, 100))),
        ["stitch.column-wide_pass"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 69, 200))),
        ["stitch.column-wide_fail"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 75, 200))),
        ["stitch.dense_pass"] = RuleCases.Drafted(draft => draft.Grid(4, 4, 60, 60)),
        ["stitch.dense_fail"] = RuleCases.Drafted(draft => draft.Grid(3, 4, 60, 60)),
        ["stitch.cover_pass"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 40, 200))),
        ["stitch.cover_fail"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 40, 200) with { Pitch = 7 })),
        ["stitch.crowded_pass"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 40, 200))),
        ["stitch.crowded_fail"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 40, 200) with { Pitch = 3 })),
        ["stitch.stacked_pass"] = RuleCases.Drafted(draft => LayerDrafts.Fills(draft, 3)),
        ["stitch.stacked_fail"] = RuleCases.Drafted(draft => LayerDrafts.Fills(draft, 4)),
        ["stitch.no-underlay_pass"] = RuleCases.Drafted(draft => draft.Sew(Fill.Of(new(0, 0, 200, 150)))),
        ["stitch.no-underlay_fail"] = RuleCases.Drafted(draft => draft.Sew(Fill.Of(new(0, 0, 200, 150)) with { UnderlayPitch = 0 })),
        ["stitch.no-tie_pass"] = RuleCases.Drafted(draft => TwoColumns(draft, tied: true)),
        ["stitch.no-tie_fail"] = RuleCases.Drafted(draft => TwoColumns(draft, tied: false)),
        ["stitch.loose-travel_pass"] = RuleCases.Drafted(draft => TwoColumns(draft, tied: true)),
        ["stitch.loose-travel_fail"] = RuleCases.Drafted(draft => draft.Sew(Column.Upright(new(0, 0), 30, 100)).Move(new(0, 190)).Stitch(new(0, 190)).Sew(Column.Upright(new(0, 190), 30, 100))),
        ["stitch.heavy_pass"] = RuleCases.Drafted(draft => draft.Grid(4, 4, 520, 520)),
        ["stitch.heavy_fail"] = RuleCases.Drafted(draft => draft.Grid(4, 4, 560, 520)),
    };

    /// <summary>Two columns with a trim between them.</summary>
    private static Draft TwoColumns(Draft draft, bool tied)
    {
        draft.Sew(Column.Upright(new(0, 0), 30, 100));
        if (tied)
            draft.Tie(new(0, 0));
        draft.Trim(new(90, 0)).Stitch(new(90, 0));
        if (tied)
            draft.Tie(new(90, 100));
        return draft.Sew(Column.Upright(new(90, 0), 30, 100));
    }
}
