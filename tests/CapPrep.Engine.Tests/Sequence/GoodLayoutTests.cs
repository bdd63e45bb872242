using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence;

/// <summary>
/// Layouts as a digitizer for caps sews them cost nothing; the same ones sewn from the top down cost nearly all that
/// order can decide (common practice, no source).
/// </summary>
public sealed class GoodLayoutTests
{
    private static readonly IReadOnlyDictionary<string, Box[]> Layouts = new Dictionary<string, Box[]>
    {
        ["three lines, each from the center out"] =
        [
            At(-60, 0), At(80, 0), At(-200, 0),
            At(-60, 140), At(80, 140), At(-200, 140),
            At(-60, 280), At(80, 280), At(-200, 280),
        ],
        ["two rows, left branch before the right one"] =
        [
            At(-60, 0), At(-200, 0), At(80, 0),
            At(-60, 140), At(-200, 140), At(80, 140),
        ],
        ["a crest over a base"] = [Sewn.Base, Sewn.Middle, Sewn.Top],
        ["rising columns on the seam"] = [At(-60, 0), At(-60, 140), At(-60, 280)],
        ["middle to the right end, back, to the left end"] = [At(-60, 0), At(80, 0), At(220, 0), At(-200, 0), At(-340, 0)],
        ["one below, two above at the sides"] = [Sewn.Base, Sewn.Left, Sewn.Right],
    };

    public static TheoryData<string> Names => [.. Layouts.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_good_layout_costs_nothing_and_is_left_as_it_is(string layout)
    {
        var order = Ordered(Layouts[layout]);

        order.Received.Shares.OrderIndex.ShouldBe(0);
        order.Received.Shares.TaglineLate.ShouldBe(0);
        order.Used.ShouldBe(UsedOrder.Received);
        order.IsChanged.ShouldBeFalse();
    }

    [Theory]
    [InlineData("three lines, each from the center out")]
    [InlineData("a crest over a base")]
    [InlineData("rising columns on the seam")]
    public void Sewn_backward_it_is_all_wrong_and_put_right(string layout)
    {
        var order = Ordered([.. Layouts[layout].Reverse()]);

        Math.Max(order.Received.Shares.OrderIndex, order.Received.Shares.TaglineLate).ShouldBeGreaterThanOrEqualTo(0.8);
        order.Used.ShouldBe(UsedOrder.Proposed);
        order.Proposed.Shares.OrderIndex.ShouldBe(0);
        order.Certificate.Claim.ShouldBe(CertificateClaim.Proven);
    }

    [Fact]
    public void A_border_sewn_round_everything_last_costs_nothing()
    {
        var draft = new Draft();
        foreach (var (box, i) in new[] { Sewn.Base, Sewn.Middle, Sewn.Top }.Select((box, i) => (box, i)))
            Sew(draft, box, isFirst: i == 0);
        draft.Trim(new(-340, -40)).Stitch(new(-340, -40)).Run(25, [new(-340, -40), new(340, -40), new(340, 400), new(-340, 400), new(-340, -40)]);

        Ordered(draft.ToTape("ROUND")).Received.Shares.OrderIndex.ShouldBe(0);
    }

    [Fact]
    public void Mirrored_on_the_seam_an_order_costs_the_same()
    {
        Box[] boxes = [At(-200, 140), At(80, 0), At(-60, 0), At(220, 140)];
        var mirrored = boxes.Select(box => new Box(-box.Right, box.Bottom, -box.Left, box.Top)).ToArray();

        Ordered(mirrored).Received.Shares.OrderIndex.ShouldBe(Ordered(boxes).Received.Shares.OrderIndex, 0.02);
    }

    /// <summary>12 mm square.</summary>
    private static Box At(int left, int bottom) => new(left, bottom, left + 120, bottom + 120);

    private static SewOrder Ordered(Box[] boxes) => Ordered(Sewn.Trimmed(boxes));

    private static SewOrder Ordered(Tape tape) => (Job.Clean with { Tape = tape }).Prepare().Order.ShouldNotBeNull();

    private static void Sew(Draft draft, Box box, bool isFirst)
    {
        TapePoint corner = new(box.Left, box.Bottom);
        if (!isFirst)
            draft.Trim(corner);
        draft.Stitch(corner).Tie(box.Center).Sew(Fill.Of(box)).Tie(box.Center);
    }
}
