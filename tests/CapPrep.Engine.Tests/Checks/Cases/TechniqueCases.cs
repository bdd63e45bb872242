using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnTechnique;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Tests.Checks.Cases;

/// <summary>Work over foam, applique and metallic thread.</summary>
internal static class TechniqueCases
{
    internal static readonly IReadOnlyDictionary<string, Job> All = new Dictionary<string, Job>
    {
        ["foam.no-stop_pass"] = FoamDrafts.Good,
        ["foam.no-stop_fail"] = FoamDrafts.Foam(draft => draft.Mark().Trim(new(-120, 0)).Sew(FoamDrafts.Left).Trim(new(30, 0)).Sew(FoamDrafts.Right)),
        ["foam.narrow_pass"] = FoamDrafts.Two(bar => bar with { Width = 5.2 }),
        ["foam.narrow_fail"] = FoamDrafts.Two(bar => bar with { Width = 5.0 }),
        ["foam.open-end_pass"] = FoamDrafts.Good,
        ["foam.open-end_fail"] = FoamDrafts.Two(bar => bar with { IsHeadClosed = false }),
        ["foam.gap_pass"] = FoamDrafts.Apart(2.0),
        ["foam.gap_fail"] = FoamDrafts.Apart(1.6),
        ["foam.pitch_pass"] = FoamDrafts.Two(bar => bar with { Pitch = 0.24 }),
        ["foam.pitch_fail"] = FoamDrafts.Two(bar => bar with { Pitch = 0.27 }),
        ["foam.wide_pass"] = FoamDrafts.Two(bar => bar with { Width = 12 }),
        ["foam.wide_fail"] = FoamDrafts.Two(bar => bar with { Left = bar.Left * 2, Width = 13.2 }),
        ["foam.fill_pass"] = FoamDrafts.Good,
        ["foam.fill_fail"] = FoamDrafts.Foam(draft => draft.GoodBars().Trim(new(-120, 350)).Stitch(new(-120, 350)).Sew(Fill.Of(new Box(-120, 350, 120, 400)))),
        ["foam.then-flat_pass"] = FoamDrafts.PartFoam(flatLast: false),
        ["foam.then-flat_fail"] = FoamDrafts.PartFoam(flatLast: true),
        ["foam.style_pass"] = FoamDrafts.Good,
        ["foam.style_fail"] = FoamDrafts.Good with { Ticket = FoamDrafts.Good.Ticket with { Location = CapLocation.Left } },
        ["foam.across-seam_pass"] = FoamDrafts.Lying(-12),
        ["foam.across-seam_fail"] = FoamDrafts.Lying(0.1),
        ["applique.no-stop_pass"] = AppliqueDrafts.Good,
        ["applique.no-stop_fail"] = AppliqueDrafts.Applique(draft => draft.Line().Cut().Line(-0.5).Stop().Cover()),
        ["applique.cover_pass"] = AppliqueDrafts.Covered(3.2),
        ["applique.cover_fail"] = AppliqueDrafts.Covered(2.7),
        ["applique.edge_pass"] = AppliqueDrafts.Covered(3.6, outward: 0.3),
        ["applique.edge_fail"] = AppliqueDrafts.Covered(3.6, outward: 1.2),
        ["applique.early_pass"] = AppliqueDrafts.Good,
        ["applique.early_fail"] = AppliqueDrafts.Applique(draft => draft.Line().Stop().Line(0, 0.9).Stop().Cover()),
        ["metallic.step_pass"] = Metallic(Column.Upright(new(0, 0), 20, 200), 5),
        ["metallic.step_fail"] = Metallic(Column.Upright(new(0, 0), 13, 200), 5),
        ["metallic.pitch_pass"] = Metallic(Column.Upright(new(0, 0), 20, 200), 5),
        ["metallic.pitch_fail"] = Metallic(Column.Upright(new(0, 0), 20, 200), 4),
        ["metallic.column_pass"] = Metallic(Column.Upright(new(0, 0), 16, 200), 5),
        ["metallic.column_fail"] = Metallic(Column.Upright(new(0, 0), 14, 200), 5),
        ["ticket.technique_pass"] = FoamDrafts.Good,
        ["ticket.technique_fail"] = FoamDrafts.Good with { Ticket = FoamDrafts.Good.Ticket with { Technique = null } },
    };

    private static Job Metallic(Column column, int pitch) => FoamDrafts.Said(
        null,
        draft => draft.Sew(column with { Pitch = pitch }),
        new TicketThread { Block = 1, Name = "Gold", Kind = ThreadKind.Metallic });
}
