using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Proofs;

public class OrderPanelsTests
{
    private static readonly Box[] FromTheTop = [new(-100, 260, 100, 360), new(-200, 130, 200, 230), new(-300, 0, 300, 100)];

    [Fact]
    public void The_proof_of_a_new_order_shows_both_orders() => Golden.Compare(ProofSheet.Lay(Some.Job(), Prepared()), "proof-orders");

    [Fact]
    public void Each_order_has_its_figures_and_the_moves_are_told()
    {
        var texts = Texts(Prepared());

        texts.ShouldContain("As received");
        texts.ShouldContain("New order, on the tape to sew");
        texts.ShouldContain(text => text.StartsWith("wrong way round: 100 %;", StringComparison.Ordinal));
        texts.ShouldContain(text => text.StartsWith("wrong way round: 0 %;", StringComparison.Ordinal));
        texts.ShouldContain(text => text.StartsWith("place ", StringComparison.Ordinal) && text.Contains("bottom line first", StringComparison.Ordinal));
    }

    [Fact]
    public void An_order_that_is_not_used_says_why()
    {
        var texts = Texts(Prepared(SewOrderMode.AsReceived));

        texts.ShouldContain("Proposed, not used");
        texts.ShouldContain("The ticket asks for the received order.");
    }

    [Fact]
    public void A_design_in_its_best_order_has_no_panels() =>
        Texts(Prepared(boxes: [.. FromTheTop.Reverse()])).ShouldNotContain("As received");

    [Fact]
    public void What_the_new_order_solves_asks_nobody_for_anything() =>
        Texts(Prepared()).ShouldNotContain(text => text.Contains("Sew from the brim up", StringComparison.Ordinal));

    private static Preparation Prepared(SewOrderMode mode = SewOrderMode.IfBetter, params Box[] boxes) => CapPrepper.Prepare(new()
    {
        Tape = Trimmed(boxes.Length == 0 ? FromTheTop : boxes),
        Ticket = SomeTicket.Resolved() with { SewOrderMode = mode },
        Setup = SomeCatalog.Setup(withStyle: true) with
        {
            Rules = EffectiveRules.For(Engine.Trade.Embedded.HouseBook, null, null, null, CapLocation.Front),
        },
        Label = "10427",
    });

    private static Tape Trimmed(Box[] boxes)
    {
        var draft = new Draft();
        foreach (var (box, i) in boxes.Select((box, i) => (box, i)))
        {
            TapePoint corner = new(box.Left, box.Bottom);
            if (i > 0)
                draft.Trim(corner);
            draft.Stitch(corner).Tie(box.Center).Sew(Fill.Of(box)).Tie(box.Center);
        }

        return draft.ToTape("ORDERS");
    }

    private static string[] Texts(Preparation preparation) =>
        [.. ProofSheet.Lay(Some.Job(), preparation).Marks.OfType<TextMark>().Select(text => text.Text)];
}
