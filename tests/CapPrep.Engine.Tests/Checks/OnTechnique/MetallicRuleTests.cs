using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using Bar = CapPrep.Engine.Tests.Checks.OnTechnique.FoamDrafts.Bar;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>Limits are house values.</summary>
public sealed class MetallicRuleTests
{
    [Theory]
    [InlineData(ThreadKind.Metallic, Severity.Warn)]
    [InlineData(ThreadKind.Matte, null)]
    [InlineData(null, null)]
    public void Only_the_threads_that_the_ticket_names_are_judged(ThreadKind? kind, Severity? expected)
    {
        var job = Sewn(kind, draft => draft.Sew(Column.Upright(new(0, 0), 12, 200)));

        Level("metallic.step", job).ShouldBe(expected);
        Level("metallic.pitch", job).ShouldBe(expected);
        Level("metallic.column", job).ShouldBe(expected);
    }

    [Fact]
    public void The_turns_of_a_fill_are_short_on_purpose() => Level("metallic.step", Sewn(
        ThreadKind.Metallic, draft => draft.Sew(Fill.Of(new Box(0, 0, 150, 200)) with { RowPitch = 5 }))).ShouldBeNull();

    [Theory]
    [InlineData(4, Severity.Warn)]
    [InlineData(5, null)]
    public void Rows_of_a_fill_are_counted_one_by_one(int pitch, Severity? expected) => Level("metallic.pitch", Sewn(
        ThreadKind.Metallic, draft => draft.Sew(Fill.Of(new Box(0, 0, 200, 200)) with { RowPitch = pitch }))).ShouldBe(expected);

    [Fact]
    public void Short_stitches_of_another_thread_do_not_count() => Level("metallic.step", FoamDrafts.Said(
        null,
        draft => draft.Sew(Column.Upright(new(0, 0), 10, 200)).ColorStop().Move(new(100, 0)).Sew(Column.Upright(new(100, 0), 30, 200)),
        new TicketThread { Block = 1, Name = "Navy" },
        new() { Block = 2, Name = "Gold", Kind = ThreadKind.Metallic })).ShouldBeNull();

    [Fact]
    public void Long_stretches_without_a_trim_are_fine() => Sewn(
        ThreadKind.Metallic, draft => draft.Sew(Fill.Of(new Box(-350, 0, 350, 400)) with { RowPitch = 5 })).Prepare().Findings
        .ShouldNotContain(finding => finding.Rule.StartsWith("metallic."));

    [Fact]
    public void Over_foam_the_limits_of_foam_hold() => FoamDrafts.Foam(
        draft => draft.Bars(FoamDrafts.Left, new Bar(3, 0)),
        new TicketThread { Block = 1, Name = "Gold" },
        new() { Block = 2, Name = "Gold", Kind = ThreadKind.Metallic }).Finding("metallic.pitch").ShouldBeNull();

    private static Job Sewn(ThreadKind? kind, Func<Draft, Draft> sew) =>
        FoamDrafts.Said(null, sew, new TicketThread { Block = 1, Name = "Gold", Kind = kind });

    private static Severity? Level(string rule, Job job) => job.Finding(rule)?.Severity;
}
