using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tests.Checks.OnLetters;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnTicket.Colors;

/// <summary>The limit of 15 is house.</summary>
public sealed class ContrastTests
{
    private static readonly TicketThread Gray = new() { Block = 1, Name = "Gray", Color = "#808080" };

    [Theory]
    [InlineData("#999999", Severity.Note)]
    [InlineData("#B0B0B0", null)]
    [InlineData("#6F6F7A", Severity.Note)]
    [InlineData("#803030", null)]
    public void A_thread_near_the_color_of_the_cap_is_a_note(string cap, Severity? expected) => Level(Ticket(new(null, cap), Gray)).ShouldBe(expected);

    [Fact]
    public void The_colors_of_the_theory_lie_on_both_sides_of_the_limit()
    {
        ColorDifference.Between("#808080", "#999999").ShouldBeInRange(8, 14.9);
        ColorDifference.Between("#808080", "#B0B0B0").ShouldBeInRange(15.1, 22);
        ColorDifference.Between("#808080", "#6F6F7A").ShouldBeInRange(4, 14.9);
        ColorDifference.Between("#808080", "#803030").ShouldBeInRange(15.1, 60);
    }

    [Fact]
    public void Without_a_cap_color_nothing_is_said() => Level(Ticket(null, Gray)).ShouldBeNull();

    [Fact]
    public void Without_a_thread_color_nothing_is_said() => Level(Ticket(new(null, "#808080"), Gray with { Color = null })).ShouldBeNull();

    [Fact]
    public void A_cap_color_is_looked_up_by_its_name_in_the_style()
    {
        var job = Job.Clean with { Ticket = Ticket(new("Stone", null), Gray), Style = Job.Clean.Style! with { CapColors = [new("stone", "#858585")] } };

        job.Finding("ticket.contrast").ShouldNotBeNull().Message.ShouldBe("Gray (block 1) hardly shows on the cap Stone.");
        (job with { Style = Job.Clean.Style }).Finding("ticket.contrast").ShouldBeNull();
    }

    [Fact]
    public void Every_lot_is_judged_with_its_own_color_and_threads()
    {
        var lots = new CapLot[]
        {
            new() { Quantity = 24, CapColor = new("Black", "#101010") },
            new() { Quantity = 24, CapColor = new("White", "#F8F8F8"), Threads = [new() { Block = 1, Name = "Ivory", Color = "#F4F0E8" }] },
        };

        var finding = (Job.Clean with { Ticket = Ticket(null, Gray) with { CapLots = lots } }).Finding("ticket.contrast").ShouldNotBeNull();

        finding.Count.ShouldBe(1);
        finding.Message.ShouldBe("Ivory (block 1) hardly shows on the cap White.");
        finding.Places.ShouldHaveSingleItem().Pointer.ShouldBe("/capLots/1/threads");
    }

    [Fact]
    public void A_thread_that_lies_on_another_is_not_seen_against_the_cap()
    {
        var job = RuleCases.Drafted(draft => draft
            .Sew(Fill.Of(new(0, 0, 300, 200))).ColorStop().Move(new(50, 50)).Sew(Fill.Of(new(50, 50, 200, 150))));

        var ticket = Ticket(new(null, "#808080"), Gray with { Block = 2 }, new TicketThread { Block = 1, Name = "Navy", Color = "#1B2A5C" });

        (job with { Ticket = ticket }).Finding("ticket.contrast").ShouldBeNull();
        (job with { Ticket = ticket with { Threads = [Gray, ticket.Threads![1] with { Block = 2 }] } }).Finding("ticket.contrast").ShouldNotBeNull();
    }

    [Theory]
    [InlineData(true, Severity.Warn)]
    [InlineData(false, Severity.Note)]
    public void Letters_that_were_found_for_sure_are_a_warn(bool sure, Severity expected) => (Lettered.Of(new TextToSew("OARS")) with
    {
        Job = Job.Clean with { Ticket = Ticket(new(null, "#858585"), Gray) },
        Known = line => line with { Sure = sure },
    }).Level("ticket.contrast").ShouldBe(expected);

    /// <summary>Navy and a black near it, then white, both on a cap that both stand off from.</summary>
    [Theory]
    [InlineData("#10101A", Severity.Warn)]
    [InlineData("#F4F4F4", null)]
    public void Letters_stand_off_from_the_fill_under_them(string letters, Severity? expected)
    {
        var job = Job.Clean with
        {
            Ticket = Ticket(new(null, "#C02020"), new TicketThread { Block = 1, Name = "Ink", Color = "#14141F" }, new TicketThread { Block = 2, Name = "Mark", Color = letters }),
        };
        var text = Lettered.On(
            draft => draft.Move(new(-250, -40)).Stitch(new(-250, -40)).Sew(Fill.Of(new(-250, -40, 250, 140))).ColorStop(),
            new TextToSew("OARS")) with { Job = job };

        (text.Level("ticket.contrast")).ShouldBe(expected);
        text.Finding("ticket.contrast")?.Message.ShouldBe("Mark (block 2) hardly shows on Ink (block 1) under it.");
    }

    private static Ticket Ticket(NamedColor? cap, params IReadOnlyList<TicketThread> threads) =>
        Job.Clean.Ticket with { CapColor = cap, Threads = threads };

    private static Severity? Level(Ticket ticket) => (Job.Clean with { Ticket = ticket }).Finding("ticket.contrast")?.Severity;
}
