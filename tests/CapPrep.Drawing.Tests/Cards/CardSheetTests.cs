using CapPrep.Drawing.Cards;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CapPrep.Engine;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Cards;

public class CardSheetTests
{
    [Fact]
    public void The_card_of_a_design_that_sews() => Golden.Compare(CardSheet.Lay(Some.Job(), Some.Sewn()), "card");

    [Fact]
    public void The_card_on_letter_paper_with_inches() => Golden.Compare(
        CardSheet.Lay(Some.Job() with { Paper = Paper.Letter, Units = LengthUnits.MmInch }, Some.Sewn()), "card-letter");

    [Fact]
    public void The_hold_sheet_of_a_returned_design() => Golden.Compare(CardSheet.Lay(Some.Job(), Some.Held()), "hold");

    [Fact]
    public void The_hold_sheet_without_a_cap_style() => Golden.Compare(CardSheet.Lay(Some.Job(), Some.WithoutStyle()), "hold-no-style");

    [Fact]
    public void The_order_number_is_large_on_both_halves() => Texts(Some.Sewn())
        .Count(text => text.Text == "HRC-2201" && text.Size >= Points.Of(24)).ShouldBe(2);

    [Fact]
    public void An_order_number_cut_in_large_stands_whole_below_it()
    {
        var sewn = Some.Sewn();
        var number = "HRC-2201-" + new string('7', 40);
        var ticket = sewn.Ticket with { Received = sewn.Ticket.Received with { OrderNumber = number } };
        Texts(sewn with { Ticket = ticket }).Count(text => text.Text.StartsWith(number)).ShouldBe(2);
    }

    [Fact]
    public void Both_halves_carry_the_code_and_its_words()
    {
        var sheet = CardSheet.Lay(Some.Job(), Some.Sewn());
        sheet.Marks.OfType<CodeMark>().Count(code => code.Text == "CAPPREP 10427 1A2B3C4D").ShouldBe(2);
        sheet.Marks.OfType<TextMark>().Count(text => text.Text == "CAPPREP 10427 1A2B3C4D").ShouldBe(2);
    }

    [Fact]
    public void Nothing_on_a_card_is_smaller_than_ten_points() =>
        Texts(Some.Sewn()).ShouldAllBe(text => text.Size >= Points.Of(10));

    [Fact]
    public void Nothing_on_a_card_is_cut() => Texts(Some.Sewn()).ShouldAllBe(text => !text.Text.EndsWith('…'));

    [Theory]
    [InlineData(Verdict.ReturnToOrderDesk)]
    [InlineData(Verdict.ReturnToDigitizer)]
    public void A_returned_design_has_neither_needles_nor_code(Verdict verdict)
    {
        var sheet = CardSheet.Lay(Some.Job(), Some.Sewn() with { Verdict = verdict });
        sheet.Marks.OfType<CodeMark>().ShouldBeEmpty();
        var texts = sheet.Marks.OfType<TextMark>().ToArray();
        texts.ShouldContain(text => text.Text == "HOLD");
        texts.ShouldNotContain(text => text.Text.Contains("3 - 7") || text.Text.Contains("10427.DST"));
    }

    [Theory]
    [InlineData(TurnedBy.Machine, "TAPE IS UPRIGHT. Machine must be set to turn for caps.")]
    [InlineData(TurnedBy.Tape, "TAPE IS TURNED. Do not turn at the machine.")]
    public void One_sentence_says_who_turns_the_design(TurnedBy by, string sentence)
    {
        var sewn = Some.Sewn();
        var machine = sewn.Setup.Machine with { Tape = sewn.Setup.Machine.Tape with { Turn180 = by } };
        Texts(sewn with { Setup = sewn.Setup with { Machine = machine } }).ShouldContain(text => text.Text == sentence);
    }

    [Theory]
    [InlineData(StopAction.LayFoam, "stop: lay foam")]
    [InlineData(StopAction.PlacePatch, "stop: place patch")]
    [InlineData(StopAction.TrimFabric, "stop: trim fabric")]
    [InlineData(StopAction.Pause, "stop: wait for the operator")]
    public void A_stop_for_the_operator_stands_at_its_step(StopAction action, string words)
    {
        var sewn = Some.Sewn();
        var texts = Texts(sewn with { NeedlePlan = [sewn.NeedlePlan[0], sewn.NeedlePlan[1] with { Action = action }, sewn.NeedlePlan[2]] });

        texts.ShouldContain(text => text.Text == words);
        texts.ShouldContain(text => text.Text.StartsWith("Harbor blue"));
        texts.ShouldAllBe(text => !text.Text.EndsWith('…'));
    }

    [Fact]
    public void A_needle_still_to_be_threaded_leaves_room_to_write() =>
        Texts(Some.Sewn()).ShouldContain(text => text.Text == "3 - 7 - ___" && text.Size == Points.Of(18));

    [Fact]
    public void A_start_to_the_side_is_told_in_the_machines_sense()
    {
        var sewn = Some.Sewn();
        Words(sewn with { TapeToSew = sewn.TapeToSew! with { OriginShift = new(12, -225) } })
            .ShouldContain("1.2 mm toward head 1 (viewer's right on the cap)");
    }

    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void Many_needles_leave_room_for_the_rest(Paper paper)
    {
        var sewn = Some.Sewn();
        var plan = Enumerable.Range(1, 18).Select(step => sewn.NeedlePlan[0] with { Step = step }).ToArray();
        var sheet = CardSheet.Lay(Some.Job() with { Paper = paper }, sewn with { NeedlePlan = plan });
        var page = new SheetBox(0, 0, sheet.Width, sheet.Height);
        sheet.Marks.OfType<TextMark>().ShouldAllBe(text => page.Contains(text.At));
        sheet.Marks.OfType<TextMark>().ShouldContain(text => text.Text.EndsWith("come before this card.") || text.Text == "card.");
    }

    private static IEnumerable<TextMark> Texts(Preparation preparation) =>
        CardSheet.Lay(Some.Job(), preparation).Marks.OfType<TextMark>();

    private static string Words(Preparation preparation) => string.Join(' ', Texts(preparation).Select(text => text.Text));
}
