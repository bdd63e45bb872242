using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tests.Checks.Cases;

/// <summary>The seam runs through the middle of a design; a frame of stitches keeps that middle at x = 0.</summary>
internal static class SeamCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["seam.column-on-seam_pass"] = OnFrame(draft => draft.Column(40, 15)),
        ["seam.column-on-seam_fail"] = OnFrame(draft => draft.Column(-7, 15)),
        ["seam.fill-parallel_pass"] = OnFrame(draft => draft.Filled(new(-100, 100, 100, 200), upright: false)),
        ["seam.fill-parallel_fail"] = OnFrame(draft => draft.Filled(new(-100, 100, 100, 200), upright: true)),
        ["seam.no-underlay_pass"] = OnFrame(draft => draft.Filled(new(-100, 100, 100, 200), upright: false)),
        ["seam.no-underlay_fail"] = OnFrame(draft => draft.Filled(new(-100, 100, 100, 200), upright: false, underlay: 0)),
        ["seam.joint_pass"] = OnFrame(draft => draft.Halves(overlap: 15)),
        ["seam.joint_fail"] = OnFrame(draft => draft.Halves(overlap: 3)),
        ["seam.trim-on-step_pass"] = OnFrame(draft => draft.Column(120, 15)),
        ["seam.trim-on-step_fail"] = OnFrame(draft => draft.Column(72, 15)),
    };

    /// <summary>A narrow bar at each side, then the design between them.</summary>
    internal static Job OnFrame(Func<Draft, Draft> sew) =>
        RuleCases.Drafted(draft => sew(draft.Column(-320, 30).Column(290, 30)));

    /// <summary>An upright column 10 mm high whose left edge lies at an x.</summary>
    internal static Draft Column(this Draft draft, int left, int width)
    {
        var foot = new TapePoint(left, 100);
        return draft.Trim(foot).Stitch(foot).Tie(foot + new TapePoint(width / 2, 40)).Sew(Drafting.Column.Upright(foot, width, 100));
    }

    /// <summary>A filled box whose rows lie across the seam or along it.</summary>
    internal static Draft Filled(this Draft draft, Box box, bool upright, int underlay = 24)
    {
        var corner = new TapePoint(box.Left, box.Bottom);
        if (!upright)
            return draft.Trim(corner).Stitch(corner).Sew(Fill.Of(box) with { UnderlayPitch = underlay });
        var along = Fill.Of(new(box.Bottom, box.Left, box.Top, box.Right)) with { UnderlayPitch = 0 };
        var rows = new Draft().Move(new(box.Bottom, box.Left)).Stitch(new(box.Bottom, box.Left)).Sew(along).Moves.Skip(1).Select(move => new TapePoint(move.To.Y, move.To.X));
        return draft.Trim(corner).Stitches(rows);
    }

    /// <summary>A filled box whose rows begin at its upper edge.</summary>
    internal static Draft FromTop(this Draft draft, Box box)
    {
        var mirrored = Fill.Of(new(box.Left, -box.Top, box.Right, -box.Bottom)) with { UnderlayPitch = 0 };
        var start = new TapePoint(box.Left, -box.Top);
        var rows = new Draft().Move(start).Stitch(start).Sew(mirrored).Moves.Skip(1).Select(move => new TapePoint(move.To.X, -move.To.Y));
        return draft.Trim(new(box.Left, box.Top)).Stitches(rows);
    }

    /// <summary>Two fills, one on each side of the seam, that share a strip on it.</summary>
    internal static Draft Halves(this Draft draft, int overlap) => draft
        .Filled(new(-150, 100, overlap / 2, 200), upright: false)
        .Filled(new((overlap / 2) - overlap, 100, 150, 200), upright: false);
}
