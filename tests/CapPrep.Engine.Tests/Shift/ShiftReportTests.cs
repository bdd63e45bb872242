using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Shift;

public sealed class ShiftReportTests
{
    private static readonly Preparation Disagreeing = Prepare(101);

    public static TheoryData<int> Designs => [.. Enumerable.Range(0, 12)];

    [Theory]
    [MemberData(nameof(Designs))]
    public void The_received_order_is_what_drift_is_measured_against(int number)
    {
        var prepared = Prepare(number);

        prepared.Order.ShouldNotBeNull().Received.DriftRatio.ShouldBe(1);
        prepared.Order.TradeOffs[0].DriftRatio.ShouldBe(1);
        prepared.Order.Proposed.DriftRatio.ShouldBe(prepared.Shift.ShouldNotBeNull().DriftRatio);
        prepared.Shift.Sheets.Average(sheet => sheet.DriftRatio).ShouldBe(prepared.Shift.DriftRatio, 0.0002);
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void What_the_cloth_decides_costs_no_order_no_trim_and_no_color(int number)
    {
        var (with, without) = (Prepare(number), Plain(number));

        with.Order!.Proposed.Shares.OrderIndex.ShouldBe(without.Order!.Proposed.Shares.OrderIndex);
        with.Order.Proposed.Trims.ShouldBe(without.Order.Proposed.Trims);
        with.Order.Proposed.ColorChanges.ShouldBe(without.Order.Proposed.ColorChanges);
        with.Order.Certificate.Claim.ShouldBe(without.Order.Certificate.Claim);
    }

    [Fact]
    public void Where_trade_and_sheet_differ_the_order_of_least_drift_stands_in_the_table()
    {
        Disagreeing.Shift!.Disagrees.ShouldBeTrue();
        Disagreeing.Findings.ShouldContain(finding => finding.Rule == OrderRuleIds.ShiftDisagrees);

        var least = Disagreeing.Order!.TradeOffs[^1];
        least.WhyNot.ShouldStartWith("It moves the cloth least");
        least.DriftRatio.ShouldNotBeNull().ShouldBeLessThanOrEqualTo(Disagreeing.Order.TradeOffs.Min(row => row.DriftRatio!.Value));
        least.ExtraTrims.ShouldBe(0);
    }

    [Fact]
    public void Ranges_hold_what_the_sheets_say_and_words_say_the_ranges()
    {
        var shift = Enumerable.Range(0, 40).SelectMany(number => Prepare(number).Shift?.PriorShifts ?? [])
            .First(shift => shift.Up.HasOneDirection && shift.Up.ToMm - shift.Up.FromMm > 0.2);
        var (least, most) = shift.Up.FromMm >= 0 ? (shift.Up.FromMm, shift.Up.ToMm) : (-shift.Up.ToMm, -shift.Up.FromMm);

        (most / least).ShouldBeGreaterThanOrEqualTo(4.5);
        shift.Says.ShouldContain(FormattableString.Invariant($"about {least:0.0} to {most:0.0} mm"));
        shift.Says.ShouldContain(shift.Up.FromMm >= 0 ? "upward" : "toward the brim");
    }

    [Fact]
    public void What_moves_last_is_not_moved_after_it_was_sewn()
    {
        var last = Disagreeing.Order!.Order[^1];
        Disagreeing.Shift!.Drifts[last].Proposed.ShouldBe(default);
    }

    [Fact]
    public void A_cloth_clamped_all_round_has_no_sheet() => (Job.Clean with { Frame = Flat }).Prepare().Shift.ShouldBeNull();

    [Fact]
    public void A_border_sewn_long_after_its_fill_has_a_gap() =>
        Enumerable.Range(0, 40).Select(Prepare).ShouldContain(prepared => prepared.Shift != null && prepared.Shift.BorderGaps.Count > 0);

    private static CapFrame Flat => Embedded.StarterCatalog.CapFrames.Select(frame => frame.Value).First(frame => frame.Holds == FrameHold.FlatClamp);

    private static Job Of(int number) => Job.Clean with { Tape = RandomDesign.Of(number).Draft.ToTape("TEST") };

    private static Preparation Prepare(int number) => Of(number).Prepare();

    private static Preparation Plain(int number) => (Of(number) with { Frame = Flat }).Prepare();
}
