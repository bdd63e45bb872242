using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnStitches.Load;

/// <summary>Limits are house.</summary>
public sealed class HeavyDesignTests
{
    private const string Stiff = "six-panel-structured-mid";
    private const string Soft = "six-panel-unstructured-low";

    [Theory]
    [InlineData(Stiff, 18_000, null)]
    [InlineData(Stiff, 18_001, Severity.Note)]
    [InlineData(Soft, 12_000, null)]
    [InlineData(Soft, 12_001, Severity.Warn)]
    public void A_soft_crown_carries_less(string style, int stitches, Severity? expected) =>
        (Of(stitches).On(style).Finding("stitch.heavy")?.Severity).ShouldBe(expected);

    /// <summary>18,600 stitches at 650 a minute, three trims of 6 s: 28.6 and 0.3 min.</summary>
    [Fact]
    public void What_a_load_takes_is_told()
    {
        var machine = Job.Clean.Machine;
        var job = RuleCases.Drafted(draft => Sewn(Sewn(Sewn(Sewn(draft, 4650).Trim(new(0, 0)), 4650).Trim(new(0, 0)), 4650).Trim(new(0, 0)), 4650)) with
        {
            Machine = machine with
            {
                Speed = new MachineSpeed(1000, 700),
                Stops = machine.Stops with { TrimSeconds = 6 },
            },
            Style = Job.Clean.Style! with { Sewing = Job.Clean.Style.Sewing with { SpeedSpm = 650 } },
        };

        job.Finding("stitch.heavy").ShouldNotBeNull().Message
            .ShouldBe("18600 stitches are a lot for this cap; over 18000 it gets stiff. One load sews about 29 min.");
    }

    [Theory]
    [InlineData(Soft, 1000, Severity.Warn)]
    [InlineData(Soft, 600, null)]
    [InlineData(Stiff, 1000, null)]
    public void Fill_over_half_of_a_soft_crown_is_a_warn(string style, int width, Severity? expected) =>
        (RuleCases.Drafted(draft => draft.Sew(Fill.Of(new(0, 0, width, 400)))).On(style).Finding("stitch.heavy")?.Severity).ShouldBe(expected);

    private static Job Of(int stitches) => RuleCases.Drafted(draft => Sewn(draft, stitches));

    /// <summary>So many stitches up and down lines, to the right and back.</summary>
    private static Draft Sewn(Draft draft, int stitches) => draft.Stitches(Enumerable.Range(0, stitches).Select(k =>
    {
        var (line, step) = (k / 20, k % 20);
        var column = line % 80 < 40 ? line % 80 : 79 - (line % 80);
        return new TapePoint((20 * column) + (line % 2), 15 * (line % 2 == 0 ? step : 19 - step));
    }));
}
