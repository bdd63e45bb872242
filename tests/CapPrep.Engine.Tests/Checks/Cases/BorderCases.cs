using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnBorders;

namespace CapPrep.Engine.Tests.Checks.Cases;

/// <summary>A plate with a border, and what may lie between the two.</summary>
internal static class BorderCases
{
    private static readonly Box Left = new(-330, 0, -50, 200);
    private static readonly Box Right = new(50, 0, 330, 200);

    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["border.late_pass"] = BorderDrafts.Job(draft => draft.Bordered(Left, 18, 12).ColorStop().Filled(Right)),
        ["border.late_fail"] = BorderDrafts.Job(draft => draft.Filled(Left).ColorStop().Filled(Right).ColorStop().Border(Left, 18, 12)),
        ["border.thin_pass"] = BorderDrafts.Job(draft => draft.Bordered(BorderDrafts.Plate, 15, 10)),
        ["border.thin_fail"] = BorderDrafts.Job(draft => draft.Filled(BorderDrafts.Plate).ColorStop().Outlined(BorderDrafts.Plate)),
        ["border.overlap_pass"] = BorderDrafts.Job(draft => draft.Bordered(BorderDrafts.Plate, 25, 10)),
        ["border.overlap_fail"] = BorderDrafts.Job(draft => draft.Bordered(BorderDrafts.Plate, 25, 5)),
    };
}
