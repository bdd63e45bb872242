using CapPrep.Drawing.Proofs;
using CapPrep.Drawing.Sheets;
using CapPrep.Drawing.Tests.Builders;
using CapPrep.Engine;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Proofs;

public class OrderPairTests
{
    private const string Orders = "Sew order as received and as proposed";

    [Fact]
    public void The_proof_of_a_design_in_a_new_order() =>
        Golden.Compare(ProofSheet.Lay(Some.Job(), SomeOrder.Resequenced()), "proof-new-order");

    [Fact]
    public void The_proof_of_a_returned_design_with_a_better_order() =>
        Golden.Compare(ProofSheet.Lay(Some.Job(), SomeOrder.Held()), "proof-held-order");

    [Fact]
    public void Both_orders_stand_under_plain_titles_with_their_figures()
    {
        var prepared = SomeOrder.Resequenced();
        var said = Said(prepared);

        said.ShouldContain("As received");
        said.ShouldContain("New order");
        said.ShouldContain($"{prepared.Order!.Received.Trims} trims");
        said.ShouldContain("2 color changes");
        said.Count(text => text.StartsWith("wrong way round", StringComparison.Ordinal)).ShouldBe(2);
    }

    [Fact]
    public void The_biggest_move_is_named()
    {
        var prepared = SomeOrder.Resequenced();
        var order = prepared.Order!;

        Said(prepared).ShouldContain("Bottom line first: numbers 1-6 move back to 5-10.");
        Said(prepared with { Order = order with { Moves = [new OrderMove(8, 8, 0, "from the bottom up")] } })
            .ShouldContain("From the bottom up: number 9 moves up to 1.");
    }

    [Fact]
    public void An_order_that_is_not_used_says_why()
    {
        var said = Said(SomeOrder.NotUsed());

        said.ShouldContain("Proposed, not used");
        said.ShouldContain("Why it is not used: The ticket asks for the received order.");
    }

    [Fact]
    public void A_returned_design_says_that_its_new_order_waits() => Said(SomeOrder.Held()).ShouldContain("New order, on hold");

    [Fact]
    public void Where_no_other_order_is_proposed_none_is_shown()
    {
        Group(ProofSheet.Lay(Some.Job(), Some.Sewn()), Orders).ShouldBeEmpty();
        var sorted = SomeOrder.Resequenced(Some.Crest()) is { Order: { } order } prepared
            ? prepared with { Order = order with { Order = [.. Enumerable.Range(0, order.Order.Count)] } }
            : null;
        Group(ProofSheet.Lay(Some.Job(), sorted!), Orders).ShouldBeEmpty();
    }

    [Fact]
    public void First_is_light_and_last_is_dark()
    {
        var shades = Group(ProofSheet.Lay(Some.Job(), SomeOrder.Resequenced()), "New order")
            .OfType<LinesMark>().Select(line => line.Stroke.Ink.Brightness).ToArray();

        shades.ShouldBe(shades.OrderDescending());
        shades[0].ShouldBeGreaterThan(200);
        shades[^1].ShouldBeLessThan(40);
    }

    [Fact]
    public void An_element_keeps_the_place_of_its_number_in_both_pictures_and_numbers_keep_clear()
    {
        var sheet = ProofSheet.Lay(Some.Job(), SomeOrder.Resequenced());
        var (before, after) = (Plates(sheet, "As received"), Plates(sheet, "New order"));

        before.Length.ShouldBeGreaterThan(7);
        after.Select(plate => plate.X - before[0].X).ShouldBe(before.Select(plate => plate.X - before[0].X + after[0].X - before[0].X));
        for (var i = 0; i < before.Length; i++)
            before.Skip(i + 1).ShouldAllBe(other => !other.Overlaps(before[i]));
    }

    [Fact]
    public void Minutes_of_the_whole_order_are_said_with_their_sign()
    {
        var prepared = SomeOrder.Resequenced();
        var order = prepared.Order!;
        var rows = order.TradeOffs.Select(row => row with { ExtraMinutes = row.Chosen ? 1.25 : 99 });

        Said(prepared with { Order = order with { TradeOffs = [.. rows] } }).ShouldContain("+1.3 min on this order");
    }

    [Fact]
    public void Arrows_show_where_the_cloth_goes_in_each_order()
    {
        var sheet = ProofSheet.Lay(Some.Job(), Moved(across: 0.3));

        Group(sheet, "As received").OfType<ShapeMark>().Count(mark => mark.Fill == Ink.Brick).ShouldBe(1);
        Group(sheet, "New order").OfType<ShapeMark>().Count(mark => mark.Fill == Ink.Brick).ShouldBe(0);
        string.Join(" ", Said(Moved(across: 0.3))).ShouldContain("cloth moves 80 % as far (model)");
        Said(Moved(across: 0.3)).ShouldContain(text => text.Contains("arrows", StringComparison.Ordinal));
    }

    [Fact]
    public void What_nobody_would_see_has_no_arrow()
    {
        Group(ProofSheet.Lay(Some.Job(), Moved(across: 0.03)), "As received").OfType<ShapeMark>().ShouldBeEmpty();
        Said(Moved(across: 0.03)).ShouldNotContain(text => text.Contains("arrows", StringComparison.Ordinal));
    }

    private static Preparation Moved(double across)
    {
        var prepared = SomeOrder.Resequenced();
        return prepared with
        {
            Shift = new()
            {
                Calibration = ShiftCalibration.None,
                DriftRatio = 0.8,
                Sheets = [],
                Disagrees = false,
                PriorShifts = [],
                BorderGaps = [],
                Drifts = [.. prepared.Reading.Elements.Select(element => new ElementDrift(element.Index, new(element.Index == 0 ? across : 0, 0), default))],
                Says = "",
            },
        };
    }

    /// <summary>Up to seven long findings, up to eighteen threads, up to 150 mm tall.</summary>
    [Theory]
    [InlineData(0, 3, 30)]
    [InlineData(2, 3, 75)]
    [InlineData(3, 8, 75)]
    [InlineData(7, 18, 30)]
    [InlineData(7, 18, 75)]
    [InlineData(7, 18, 150)]
    public void Nothing_stands_on_anything_else(int findings, int blocks, int tall)
    {
        var long1 = Some.TooTall() with { Message = string.Join(' ', Enumerable.Repeat("The design is far too tall for this cap.", 3)) };
        var prepared = SomeOrder.Resequenced(Tower(blocks, tall * 10)) with { Findings = [.. Enumerable.Repeat(long1, findings)] };
        var sheet = ProofSheet.Lay(Some.Job(), prepared);
        var (found, threads, orders) = (Area(sheet, "Findings"), Area(sheet, "Threads"), Area(sheet, Orders));

        found.Overlaps(threads).ShouldBeFalse();
        found.Overlaps(orders).ShouldBeFalse();
        threads.Overlaps(orders).ShouldBeFalse();
        var cap = sheet.Marks.OfType<GroupStart>().Single(group => group.Title == "Cap front with the design").Clip!.Value;
        cap.Overlaps(orders).ShouldBeFalse();
        new SheetBox(0, 0, sheet.Width, sheet.Height).Inset(800).Contains(orders).ShouldBeTrue();
    }

    [Fact]
    public void A_solved_finding_stands_last_without_a_remedy()
    {
        var solved = Some.TooTall() with { State = FindingState.Solved, Message = "It was solved." };
        var open = Some.OffCenter();
        var said = Said(SomeOrder.Resequenced() with { Findings = [open, solved] });

        said.ShouldNotContain(text => text.StartsWith("Order desk:", StringComparison.Ordinal));
        said.IndexOf("Solved by the new order").ShouldBeInRange(said.IndexOf("WARN  ·  2, 3") + 1, said.IndexOf("It was solved.") - 1);
    }

    [Fact]
    public void Where_everything_is_solved_nothing_is_left_open()
    {
        var solved = Some.TooTall() with { State = FindingState.Solved };

        Said(SomeOrder.Resequenced() with { Findings = [solved] }).ShouldContain("Nothing is left open.");
    }

    /// <summary>Bars one over the other, each a block of its own, sewn from the top down.</summary>
    private static Tape Tower(int blocks, int tall)
    {
        var pen = new StitchPen();
        for (var block = blocks - 1; block >= 0; block--)
        {
            pen.TrimTo(-200, block * tall / blocks).Column(-200, block * tall / blocks, 400, tall / blocks / 2);
            if (block > 0)
                pen.Stop();
        }

        return pen.Tape();
    }

    private static List<string> Said(Preparation preparation) =>
        [.. ProofSheet.Lay(Some.Job(), preparation).Marks.OfType<TextMark>().Select(text => text.Text)];

    private static SheetBox[] Plates(Sheet sheet, string title) => [.. Group(sheet, title).OfType<BoxMark>().Select(mark => mark.Box)];

    private static SheetBox Area(Sheet sheet, string title) => Group(sheet, title).Select(mark => mark switch
    {
        TextMark text => (SheetBox?)new SheetBox(text.At.X, text.At.Y - text.Size, 10, text.Size),
        BoxMark box => box.Box,
        _ => null,
    }).OfType<SheetBox>().Aggregate((all, next) => all.Union(next));

    private static IReadOnlyList<Mark> Group(Sheet sheet, string title)
    {
        var (inside, depth) = (new List<Mark>(), 0);
        foreach (var mark in sheet.Marks.SkipWhile(mark => mark is not GroupStart start || start.Title != title))
        {
            depth += mark is GroupStart ? 1 : mark is GroupEnd ? -1 : 0;
            if (depth == 0)
                break;
            inside.Add(mark);
        }

        return inside;
    }
}
