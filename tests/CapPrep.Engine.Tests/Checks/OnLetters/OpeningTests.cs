using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

public sealed class OpeningTests
{
    private const string Counter = "lettering.counter";
    private const string Gap = "lettering.gap";

    private static readonly TextToSew Line = new("ocean") { Gap = 10 };

    [Theory]
    [InlineData(0.9, null)]
    [InlineData(0.8, Severity.Warn)]
    public void Openings_below_nine_tenths_of_a_millimeter_close(double counter, Severity? expected) =>
        WithCounters(Line, counter, counter, null, counter, null).Level(Counter).ShouldBe(expected);

    [Fact]
    public void One_small_opening_among_many_is_no_finding() =>
        WithCounters(Line, 1.2, 0.6, 1.2, 1.1, null).Level(Counter).ShouldBeNull();

    [Fact]
    public void Letters_without_openings_have_none_too_small() =>
        WithCounters(Line, null, null, null, null, null).Level(Counter).ShouldBeNull();

    [Fact]
    public void The_place_is_the_letter_with_the_smallest_opening()
    {
        var lettered = WithCounters(Line, 0.8, 0.8, null, 0.5, null);

        var finding = lettered.Finding(Counter).ShouldNotBeNull();

        finding.Message.ShouldBe("The openings inside letters are 0.8 mm wide; at least 0.9 mm is wanted.");
        finding.Places.ShouldHaveSingleItem().BoxMm.ShouldBe(lettered.Subject().TextLines[0].Glyphs[3].Box.ToMillimeters());
        finding.Limit.Source!.Row.ShouldBe("L14");
    }

    [Theory]
    [InlineData(5, null)]
    [InlineData(4, Severity.Warn)]
    public void Gaps_below_half_a_millimeter_run_together(int gap, Severity? expected) =>
        Lettered.Of(Line with { Gap = gap }).Level(Gap).ShouldBe(expected);

    [Fact]
    public void A_word_gap_does_not_hide_narrow_letters() =>
        Lettered.Of(new TextToSew("no sun in") { Gap = 3 }).Finding(Gap)!.Message
            .ShouldBe("Letters stand 0.3 mm apart; at least 0.5 mm is wanted.");

    [Fact]
    public void Letters_that_overlap_are_said_to()
    {
        var finding = Lettered.Of(Line with { Gap = -3 }).Finding(Gap).ShouldNotBeNull();

        finding.Message.ShouldBe("Letters overlap by 0.3 mm; a gap of at least 0.5 mm is wanted.");
        finding.Limit.Source!.Row.ShouldBe("L15");
    }

    [Fact]
    public void Connected_script_has_no_gaps_to_judge()
    {
        var script = WithCounters(Line with { Gap = -3 }, 0.5, 0.5, 0.5, 0.5, 0.5);
        var connected = script with { Known = line => script.Known(line) with { IsConnected = true } };

        connected.Level(Gap).ShouldBeNull();
        connected.Level(Counter).ShouldBeNull();
    }

    [Theory]
    [InlineData(49, null)]
    [InlineData(50, Severity.Warn)]
    public void Small_letters_of_running_stitch_are_left_alone(int height, Severity? expected)
    {
        var running = WithCounters(Line with { Work = LetterWork.Running, XHeight = height, Gap = 3 }, 0.5, 0.5, 0.5, 0.5, 0.5);

        running.Level(Gap).ShouldBe(expected);
        running.Level(Counter).ShouldBe(expected);
    }

    [Theory]
    [InlineData(0.7, null)]
    [InlineData(0.6, Severity.Warn)]
    public void Finer_thread_leaves_smaller_openings_open(double counter, Severity? expected)
    {
        var thread = new TicketThread { Block = 1, Name = "Navy", WeightWt = 60 };

        (WithCounters(Line, counter, counter, counter, counter, counter) with
        {
            Job = Job.Clean with { Ticket = Job.Clean.Ticket with { Threads = [thread] } },
        }).Level(Counter).ShouldBe(expected);
    }

    private static Lettered WithCounters(TextToSew line, params double?[] counters) => Lettered.Of(line) with
    {
        Known = known => known with { Glyphs = [.. known.Glyphs.Select((glyph, i) => glyph with { CounterMm = counters[i] })] },
    };
}
