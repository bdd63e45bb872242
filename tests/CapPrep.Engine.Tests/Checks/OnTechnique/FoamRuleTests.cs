using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using Bar = CapPrep.Engine.Tests.Checks.OnTechnique.FoamDrafts.Bar;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>Limits are house values but for the width of shapes and their gaps, which are common practice.</summary>
public sealed class FoamRuleTests
{
    private static readonly string[] Flat = ["stitch.dense", "ticket.technique"];

    [Fact]
    public void Good_foam_letters_after_a_stop_are_silent() =>
        FoamDrafts.Good.Prepare().Findings.ShouldAllBe(finding => finding.Severity == Severity.Note);

    [Fact]
    public void Without_their_stop_they_hold_and_nothing_else_is_said()
    {
        var findings = RuleCases.All["foam.no-stop_fail"].Prepare().Findings.Where(finding => finding.Severity > Severity.Note).ToArray();

        findings.ShouldHaveSingleItem().Rule.ShouldBe("foam.no-stop");
        findings[0].Severity.ShouldBe(Severity.Hold);
        findings[0].Asks.ShouldBe(Asks.ReturnToDigitizer);
    }

    [Fact]
    public void Foam_that_is_laid_before_the_start_needs_no_stop() => FoamDrafts.Foam(
        draft => draft.Move(new(-120, 0)).Sew(FoamDrafts.Left).Trim(new(30, 0)).Sew(FoamDrafts.Right),
        new TicketThread { Block = 1, Name = "Red", Action = StopAction.LayFoam }).Finding("foam.no-stop").ShouldBeNull();

    [Fact]
    public void Flat_satin_before_the_foam_is_laid_is_no_foam_work()
    {
        var job = FoamDrafts.Foam(draft => draft.Move(new(-120, 330)).Stitch(new(-120, 330)).Sew(Column.Upright(new(-120, 330), 20, 60))
            .ColorStop().Move(new(-120, 0)).Sew(FoamDrafts.Left).Trim(new(30, 0)).Sew(FoamDrafts.Right));

        job.Prepare().Findings.ShouldNotContain(finding => finding.Rule.StartsWith("foam."));
    }

    [Theory]
    [InlineData(3.3, Severity.Hold)]
    [InlineData(3.7, Severity.Warn)]
    [InlineData(4.9, Severity.Warn)]
    [InlineData(5.2, null)]
    public void Narrow_columns_warn_and_very_narrow_ones_hold(double width, Severity? expected) =>
        Level("foam.narrow", FoamDrafts.Two(bar => bar with { Width = width })).ShouldBe(expected);

    [Theory]
    [InlineData(12.5, null)]
    [InlineData(12.9, Severity.Warn)]
    public void Wide_columns_warn(double width, Severity? expected) =>
        Level("foam.wide", FoamDrafts.Two(bar => bar with { Left = bar.Left * 2, Width = width })).ShouldBe(expected);

    [Theory]
    [InlineData(0.12, Severity.Warn)]
    [InlineData(0.16, null)]
    [InlineData(0.20, null)]
    [InlineData(0.25, null)]
    [InlineData(0.28, Severity.Warn)]
    public void Spacing_is_judged_on_both_sides(double pitch, Severity? expected) =>
        Level("foam.pitch", FoamDrafts.Two(bar => bar with { Pitch = pitch })).ShouldBe(expected);

    [Fact]
    public void Spacing_that_is_too_small_names_the_smaller_limit() =>
        FoamDrafts.Two(bar => bar with { Pitch = 0.12 }).Finding("foam.pitch").ShouldNotBeNull().Message
            .ShouldBe("2 columns over foam: needle points on one side lie 0.12 mm apart; at least 0.15 mm is wanted.");

    [Theory]
    [InlineData(1, null)]
    [InlineData(0.86, null)]
    [InlineData(0.6, Severity.Warn)]
    public void An_end_is_closed_over_four_fifths_of_its_width(double share, Severity? expected) =>
        Level("foam.open-end", FoamDrafts.Two(bar => bar with { EndShare = share })).ShouldBe(expected);

    [Fact]
    public void Every_open_end_is_a_place()
    {
        var finding = FoamDrafts.Two(bar => bar with { IsHeadClosed = false, IsFootClosed = false }).Finding("foam.open-end").ShouldNotBeNull();

        finding.Count.ShouldBe(4);
        finding.Measured.ShouldBe(new Quantity(0, "share"));
    }

    [Fact]
    public void An_end_under_another_column_is_closed() => FoamDrafts.Foam(draft => draft
        .Bars(new Bar(-4.5, 0)).Trim(new(30, 120)).Stitches(Enumerable.Range(0, 221).Select(row => FoamDrafts.At(3 + (row / 10.0), row % 2 == 0 ? 12 : 20))))
        .Finding("foam.open-end").ShouldNotBeNull().Count.ShouldBe(1);

    [Fact]
    public void A_column_that_runs_into_points_closes_itself() => FoamDrafts.Foam(draft => draft
        .Bars().ColorStop().Move(new(0, 0)).Stitches(Enumerable.Range(0, 301).Select(row => Leaf(row)))).Finding("foam.open-end").ShouldBeNull();

    [Fact]
    public void A_ring_closes_itself() => FoamDrafts.Foam(draft => draft
        .Bars().ColorStop().Move(new(150, 200)).Stitches(Enumerable.Range(0, 801).Select(row => Round(row)))).Finding("foam.open-end").ShouldBeNull();

    [Theory]
    [InlineData(0.2, null)]
    [InlineData(1.6, Severity.Warn)]
    [InlineData(1.9, null)]
    public void Gaps_between_shapes_are_judged_and_columns_that_touch_are_one_shape(double gap, Severity? expected) =>
        Level("foam.gap", FoamDrafts.Apart(gap)).ShouldBe(expected);

    [Fact]
    public void A_fill_before_the_foam_is_laid_is_flat_work() => FoamDrafts.Foam(draft => draft
        .Stitch(new(-120, 350)).Sew(Fill.Of(new Box(-120, 350, 120, 400))).ColorStop().Move(new(-120, 0)).Sew(FoamDrafts.Left).Trim(new(30, 0)).Sew(FoamDrafts.Right))
        .Finding("foam.fill").ShouldBeNull();

    [Fact]
    public void Lines_behind_foam_work_are_not_flat_work() => FoamDrafts.Foam(draft => draft.GoodBars().Trim(new(-120, 350)).Run(25, new TapePoint(-120, 350), new(120, 350)))
        .Finding("foam.then-flat").ShouldBeNull();

    [Theory]
    [InlineData(CapLocation.Front, null)]
    [InlineData(CapLocation.Left, Severity.Warn)]
    [InlineData(CapLocation.Right, Severity.Warn)]
    [InlineData(CapLocation.Back, Severity.Warn)]
    [InlineData(CapLocation.Visor, Severity.Warn)]
    public void Foam_belongs_on_the_front(CapLocation location, Severity? expected) =>
        Level("foam.style", FoamDrafts.Good with { Ticket = FoamDrafts.Good.Ticket with { Location = location } }).ShouldBe(expected);

    [Theory]
    [InlineData(0.1, Severity.Warn)]
    [InlineData(-25, Severity.Warn)]
    [InlineData(1.5, null)]
    [InlineData(-12, null)]
    public void A_closed_end_along_the_seam_warns(double from, Severity? expected) =>
        Level("foam.across-seam", FoamDrafts.Lying(from)).ShouldBe(expected);

    [Fact]
    public void Without_a_center_seam_an_end_may_lie_in_the_middle() =>
        FoamDrafts.Lying(0.1).On("five-panel-structured-mid").Finding("foam.across-seam").ShouldBeNull();

    [Theory]
    [InlineData(false, null)]
    [InlineData(true, Severity.Warn)]
    public void Flat_work_comes_before_foam_work(bool flatLast, Severity? expected) =>
        Level("foam.then-flat", FoamDrafts.PartFoam(flatLast)).ShouldBe(expected);

    [Fact]
    public void A_guess_is_told_once_and_the_rules_of_foam_and_of_flat_work_say_nothing()
    {
        var job = FoamDrafts.Two(bar => bar with { IsHeadClosed = false });
        var findings = (job with { Ticket = job.Ticket with { Technique = null } }).Prepare().Findings;

        findings.Where(finding => finding.Severity > Severity.Note).Select(finding => finding.Rule).ShouldBe(["ticket.technique"]);
        findings.ShouldNotContain(finding => finding.Rule.StartsWith("foam."));
    }

    [Theory]
    [InlineData(Technique.Flat, 9, Severity.Warn)]
    [InlineData(null, 9, Severity.Warn)]
    [InlineData(Technique.Foam, 9, null)]
    [InlineData(null, 2.5, null)]
    public void Only_what_the_ticket_does_not_call_foam_work_is_guessed(Technique? technique, double width, Severity? expected)
    {
        var job = FoamDrafts.Two(bar => bar with { Width = width });

        Level("ticket.technique", job with { Ticket = job.Ticket with { Technique = technique } }).ShouldBe(expected);
    }

    [Theory]
    [InlineData(CapLocation.Left, Severity.Hold)]
    [InlineData(CapLocation.Front, null)]
    public void Foam_on_a_side_contradicts_itself(CapLocation location, Severity? expected) =>
        Level("ticket.technique", FoamDrafts.Good with { Ticket = FoamDrafts.Good.Ticket with { Location = location } }).ShouldBe(expected);

    [Theory]
    [InlineData("six-panel-unstructured-low", Technique.Foam, Severity.Warn)]
    [InlineData("six-panel-structured-mid", Technique.PartFoam, null)]
    [InlineData("visor", Technique.Flat, null)]
    [InlineData("visor", Technique.Applique, Severity.Warn)]
    public void A_style_takes_a_technique_or_not(string style, Technique technique, Severity? expected)
    {
        var threads = technique == Technique.PartFoam ? new[] { new TicketThread { Block = 1, Name = "Red", Foam = true } } : Job.Clean.Ticket.Threads;

        Level("ticket.technique", (Job.Clean with { Ticket = Job.Clean.Ticket with { Technique = technique, Threads = threads } }).On(style)).ShouldBe(expected);
    }

    [Fact]
    public void Flat_work_with_threads_over_foam_contradicts_itself() => Level("ticket.technique", Job.Clean with
    {
        Ticket = Job.Clean.Ticket with { Technique = Technique.Flat, Threads = [new() { Block = 1, Name = "Red", Foam = true }] },
    }).ShouldBe(Severity.Hold);

    [Fact]
    public void Part_foam_has_to_say_which_thread() =>
        Level("ticket.technique", Job.Clean with { Ticket = Job.Clean.Ticket with { Technique = Technique.PartFoam } }).ShouldBe(Severity.Warn);

    [Fact]
    public void Flat_designs_are_not_judged_by_rules_of_foam() =>
        (Job.Clean with { Tape = FoamDrafts.Said(null, draft => draft.Sew(Column.Upright(new(0, 0), 30, 200))).Tape }).Prepare().Findings
            .ShouldNotContain(finding => finding.Rule.StartsWith("foam.") || Flat.Contains(finding.Rule));

    private static TapePoint Leaf(int row) => FoamDrafts.At((row % 2 == 0 ? -1 : 1) * 4.5 * Math.Sin(Math.PI * row / 300), row / 10.0);

    private static TapePoint Round(int row)
    {
        var (turn, radius) = (2 * Math.PI * row / 800, row % 2 == 0 ? 15 : 8);
        return FoamDrafts.At(radius * Math.Cos(turn), 20 + (radius * Math.Sin(turn)));
    }

    private static Severity? Level(string rule, Job job) => job.Finding(rule)?.Severity;
}
