using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters.OnLines;

public sealed class TurnedTests
{
    private const string Rule = "place.turned";

    private static readonly TextToSew Upright = new("the bold harbor");

    [Fact]
    public void Lower_case_on_its_feet_is_upright() => Lettered.Of(Upright).Level(Rule).ShouldBeNull();

    [Fact]
    public void Lower_case_on_its_head_asks_which_end_is_up()
    {
        var finding = OnItsHead(Upright).Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Warn);
        finding.Message.ShouldBe("The tops of the letters are straighter than their feet: check which end is up.");
        finding.Remedy!.Who.ShouldBe(Actor.OrderDesk);
    }

    [Fact]
    public void On_an_arc_it_is_the_same() => OnItsHead(Upright with { Radius = 900 }).Level(Rule).ShouldBe(Severity.Warn);

    [Fact]
    public void A_turned_tape_that_the_ticket_calls_turned_is_upright() => (Lettered.Of(Upright with { TiltDegrees = 180 }) with
    {
        Job = Job.Clean with { Ticket = Job.Clean.Ticket with { TapeIs = TapeOrientation.Turned } },
        Known = line => line with { Base = line.Base with { Start = line.Base.Start with { X = -50, Y = 13 }, End = line.Base.End with { X = 50, Y = 13 } } },
    }).Level(Rule).ShouldBeNull();

    [Fact]
    public void Capitals_do_not_tell() => OnItsHead(new TextToSew("HARBOR LINE")).Level(Rule).ShouldBeNull();

    [Fact]
    public void Too_few_letters_with_ascenders_do_not_tell() => OnItsHead(new TextToSew("rod")).Level(Rule).ShouldBeNull();

    [Fact]
    public void Descenders_alone_do_not_turn_a_word() => Lettered.Of(new TextToSew("happy")).Level(Rule).ShouldBeNull();

    [Fact]
    public void Another_line_that_stands_upright_speaks_for_the_design()
    {
        var both = Lettered.Of(Upright with { TiltDegrees = 180 }, Upright with { Middle = new(0, 200) });

        (both with { Known = line => line.Box.Bottom < 250 ? Flipped(line) : line }).Level(Rule).ShouldBeNull();
    }

    private static Lettered OnItsHead(TextToSew line) => Lettered.Of(line with { TiltDegrees = 180 }) with { Known = Flipped };

    /// <summary>A base line goes to the viewer's right whichever end of the letters is up.</summary>
    private static Engine.Lettering.TextLine Flipped(Engine.Lettering.TextLine line) =>
        line with { Base = line.Base with { Start = line.Base.End, End = line.Base.Start, RiseMm = -line.Base.RiseMm } };
}
