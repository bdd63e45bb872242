using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Ends;

/// <summary>Row L44 calls 1 to 1.5 mm usual (grade D); tape units are 0.1 mm.</summary>
public sealed class MissingTieTests
{
    /// <summary>Five columns have eight ends at trims; the ends of the tape itself are not cut.</summary>
    [Theory]
    [InlineData(0, null)]
    [InlineData(2, Severity.Note)]
    [InlineData(3, Severity.Warn)]
    [InlineData(8, Severity.Warn)]
    public void More_than_a_quarter_of_the_ends_untied_is_a_warn(int untied, Severity? expected) =>
        Level(Columns(5, untied, tie: 10)).ShouldBe(expected);

    [Theory]
    [InlineData(15, null)]
    [InlineData(16, Severity.Warn)]
    public void A_stitch_of_a_tie_is_at_most_one_and_a_half_millimeters_long(int length, Severity? expected) =>
        Level(Columns(3, untied: 0, length)).ShouldBe(expected);

    [Fact]
    public void A_machine_that_ties_by_itself_needs_none() =>
        (Of(Columns(5, untied: 8, tie: 10)) with { Machine = Job.Clean.Machine with { AddsTies = true } }).Finding("stitch.no-tie").ShouldBeNull();

    [Fact]
    public void A_color_stop_cuts_the_thread_too() => Level(new Draft()
        .Sew(Column.Upright(new(0, 0), 30, 100)).ColorStop().Move(new(80, 0)).Stitch(new(80, 0)).Sew(Column.Upright(new(80, 0), 30, 100))).ShouldBe(Severity.Warn);

    [Fact]
    public void A_lone_stitch_has_no_ends() => Level(new Draft()
        .Sew(Column.Upright(new(0, 0), 30, 100)).Tie(new(0, 0)).Trim(new(80, 0)).Stitch(new(80, 0))).ShouldBeNull();

    [Fact]
    public void The_short_turn_at_the_end_of_a_fill_is_no_tie() => Level(new Draft()
        .Sew(Fill.Of(new(0, 0, 120, 100))).Trim(new(200, 0)).Stitch(new(200, 0)).Tie(new(200, 100)).Sew(Fill.Of(new(200, 0, 320, 100)))).ShouldBe(Severity.Warn);

    [Fact]
    public void Ends_are_counted() =>
        Of(Columns(5, untied: 2, tie: 10)).Finding("stitch.no-tie").ShouldNotBeNull().Message.ShouldBe("2 ends of thread are cut without a tie.");

    /// <summary>Columns beside each other; the first so many ends at trims go without tie.</summary>
    private static Draft Columns(int count, int untied, int tie)
    {
        var draft = new Draft();
        for (var column = 0; column < count; column++)
        {
            var foot = new TapePoint(80 * column, 0);
            if (column > 0)
                draft.Trim(foot).Stitch(foot);
            if (column > 0 && untied-- <= 0)
                draft.Tie(foot + new TapePoint(0, 100), tie);
            draft.Sew(Column.Upright(foot, 30, 100) with { UnderlayStitch = 0 });
            if (column < count - 1 && untied-- <= 0)
                draft.Tie(foot, tie);
        }

        return draft;
    }

    private static Job Of(Draft draft) => RuleCases.Drafted(_ => draft);

    private static Severity? Level(Draft draft) => Of(draft).Finding("stitch.no-tie")?.Severity;
}
