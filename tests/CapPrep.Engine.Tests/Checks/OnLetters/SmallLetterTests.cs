using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

public sealed class SmallLetterTests
{
    private const string Rule = "lettering.small";

    [Theory]
    [InlineData(64, null)]
    [InlineData(63, Severity.Note)]
    [InlineData(50, Severity.Note)]
    [InlineData(49, Severity.Warn)]
    [InlineData(40, Severity.Warn)]
    [InlineData(39, Severity.Hold)]
    public void Height_passes_one_limit_after_the_other(int height, Severity? expected) => Level(height).ShouldBe(expected);

    /// <summary>What the limits are multiplied by for thread, ground and make; the warn limit is 5 mm.</summary>
    [Theory]
    [InlineData(60, null, 38, Severity.Note)]
    [InlineData(60, null, 37, Severity.Warn)]
    [InlineData(75, null, 25, Severity.Note)]
    [InlineData(75, null, 24, Severity.Warn)]
    [InlineData(100, null, 25, Severity.Note)]
    [InlineData(50, null, 49, Severity.Warn)]
    [InlineData(30, null, 50, Severity.Note)]
    [InlineData(null, ThreadKind.Metallic, 80, Severity.Note)]
    [InlineData(null, ThreadKind.Metallic, 79, Severity.Warn)]
    [InlineData(null, ThreadKind.Rayon, 50, Severity.Note)]
    public void Finer_thread_takes_smaller_letters_and_metallic_larger_ones(int? weight, ThreadKind? kind, int height, Severity? expected)
    {
        var thread = new TicketThread { Block = 1, Name = "Navy", WeightWt = weight, Kind = kind };

        (Lettered.Of(Line(height)) with { Job = Job.Clean with { Ticket = Job.Clean.Ticket with { Threads = [thread] } } })
            .Level(Rule).ShouldBe(expected);
    }

    [Fact]
    public void Of_lots_with_different_threads_the_coarsest_counts()
    {
        var lots = new[] { 60, 40 }.Select(weight => new CapLot
        {
            Quantity = 24,
            Threads = [new TicketThread { Block = 1, Name = $"Navy {weight}", WeightWt = weight }],
        });

        (Lettered.Of(Line(45)) with { Job = Job.Clean with { Ticket = Job.Clean.Ticket with { Threads = null, CapLots = [.. lots] } } })
            .Level(Rule).ShouldBe(Severity.Warn);
    }

    [Theory]
    [InlineData(40, null)]
    [InlineData(30, Severity.Note)]
    [InlineData(29, Severity.Warn)]
    [InlineData(23, Severity.Hold)]
    public void Letters_of_one_running_line_may_be_smaller(int height, Severity? expected) =>
        Lettered.Of(Line(height) with { Work = LetterWork.Running }).Level(Rule).ShouldBe(expected);

    [Theory]
    [InlineData(45, Severity.Note)]
    [InlineData(44, Severity.Warn)]
    public void Letters_on_a_fill_may_be_smaller(int height, Severity? expected) =>
        Lettered.On(Ground, Line(height)).Level(Rule).ShouldBe(expected);

    [Fact]
    public void A_fill_beside_the_line_is_no_ground() =>
        Lettered.On(draft => draft.Sew(Fill.Of(new Box(-300, 100, 300, 200))), Line(46)).Level(Rule).ShouldBe(Severity.Warn);

    [Fact]
    public void A_line_in_doubt_warns_where_a_sure_one_holds()
    {
        var finding = (Lettered.Of(Line(35)) with { Known = line => line with { Sure = false } }).Finding(Rule).ShouldNotBeNull();

        finding.Severity.ShouldBe(Severity.Warn);
        finding.Limit.Value.ShouldBe(5);
    }

    [Fact]
    public void The_finding_names_the_letters_box_and_both_heights()
    {
        var line = new TextToSew("Harbor") { XHeight = 38, StrokeWidth = 8 };

        var finding = Lettered.Of(line).Finding(Rule).ShouldNotBeNull();

        finding.Message.ShouldBe("The smallest letters are 3.8 mm tall, the capitals 5.3 mm. At least 4 mm is wanted.");
        finding.Measured.ShouldBe(new(3.8, "mm"));
        finding.Asks.ShouldBe(Asks.ReturnToDigitizer);
        finding.Remedy!.Message.ShouldStartWith("Make the letters at least 4 mm tall");
        finding.Limit.Source!.Row.ShouldBe("L02");
        var place = finding.Places.ShouldHaveSingleItem();
        place.BoxMm!.Value.Height.ShouldBe(3.8, 0.3);
        place.Blocks.ShouldBe([1]);
        place.Stitches.ShouldNotBeNull();
    }

    [Fact]
    public void A_factor_is_said_in_words()
    {
        var thread = new TicketThread { Block = 1, Name = "Navy", WeightWt = 60, Kind = ThreadKind.Metallic };
        var job = Job.Clean with { Ticket = Job.Clean.Ticket with { Threads = [thread] } };

        (Lettered.On(Ground, Line(30) with { Work = LetterWork.Running }) with { Job = job }).Finding(Rule)!.Message
            .ShouldBe("The smallest letters are 3 mm tall. Wanted for single-line letters in 60 wt metallic thread on a fill: 3.2 mm.");
    }

    [Fact]
    public void Lines_are_told_of_in_one_finding_with_the_smallest_first()
    {
        var finding = Lettered.Of(Line(60), Line(45) with { Middle = new(0, 200) }).Finding(Rule).ShouldNotBeNull();

        finding.Count.ShouldBe(2);
        finding.Message.ShouldBe("The smallest letters are 4.5 mm tall. At least 5 mm is wanted. 1 more line is small too.");
        finding.Places.Count.ShouldBe(2);
    }

    /// <summary>Lower case of the given height, tape units.</summary>
    private static TextToSew Line(int height) => new("ocean surge") { XHeight = height, StrokeWidth = Math.Min(10, height / 5) };

    private static Draft Ground(Draft draft) => draft.Sew(Fill.Of(new Box(-400, -40, 400, 120)));

    private static Severity? Level(int height) => Lettered.Of(Line(height)).Level(Rule);
}
