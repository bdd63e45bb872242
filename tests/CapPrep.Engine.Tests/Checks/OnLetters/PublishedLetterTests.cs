using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using Shouldly;
using Xunit;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

/// <summary>
/// Published limits of letters against what the checks say. A published smallest size is good, and 0.1 mm under it a
/// warn; heights in mm, inches turned into mm and rounded up to the tape's 0.1 mm.
/// </summary>
public sealed class PublishedLetterTests
{
    /// <summary>
    /// Row L02: 5 mm is the smallest satin letter in 40 wt, lower case included (Small lettering Q and A, Graphics Pro,
    /// https://graphics-pro.com/education/what-can-embroiderers-do-to-execute-small-lettering-successfully/).
    /// </summary>
    [Theory]
    [InlineData(5.0, false)]
    [InlineData(4.9, true)]
    public void Satin_letters_in_40_wt_are_5_mm(double height, bool warns) => Warns(height, 40, LetterWork.Satin).ShouldBe(warns);

    /// <summary>
    /// Row L01: 1/5 in is the smallest letter on hats (Hat tricks, Impressions, 15 March 2016,
    /// http://impressions.issshows.com/embroidery-digitizing/Hat-Tricks-9833.shtml). It may not warn.
    /// </summary>
    [Fact]
    public void A_fifth_of_an_inch_is_no_warn() => Warns(Math.Ceiling(0.2 * 254) / 10, 40, LetterWork.Satin).ShouldBeFalse();

    /// <summary>Row L03: 60 wt takes letters about a quarter smaller, 3.75 mm instead of 5 mm (the same page as L02).</summary>
    [Theory]
    [InlineData(3.8, false)]
    [InlineData(3.7, true)]
    public void Sixty_weight_takes_a_quarter_less(double height, bool warns) => Warns(height, 60, LetterWork.Satin).ShouldBe(warns);

    /// <summary>
    /// Row L06: 2.5 mm in 75 wt (Smallest letters Q and A, Printwear, https://printwearmag.com/question-answers/
    /// my-customers-are-constantly-looking-smaller-and-smaller-letters-their-corporate).
    /// </summary>
    [Theory]
    [InlineData(2.5, false)]
    [InlineData(2.4, true)]
    public void Seventy_five_weight_takes_2_5_mm(double height, bool warns) => Warns(height, 75, LetterWork.Satin).ShouldBe(warns);

    /// <summary>Row L18: letters of one running line can be about 3 mm in 40 wt (the same page as L02).</summary>
    [Theory]
    [InlineData(3.0, false)]
    [InlineData(2.9, true)]
    public void Single_line_letters_are_3_mm(double height, bool warns) => Warns(height, 40, LetterWork.Running).ShouldBe(warns);

    /// <summary>
    /// Row L10: capitals 6.4 mm and more, all capitals from 3.8 mm (Creating designs with letters, Printing Impressions,
    /// https://www.piworld.com/post/embroidery-digitizing-tips-on-creating-designs-with-letters/). From 6.4 mm nothing
    /// is said; the hold below 4 mm is house, and under 3.8 mm no source is against it.
    /// </summary>
    [Theory]
    [InlineData(6.4, null)]
    [InlineData(3.7, Severity.Hold)]
    public void From_6_4_mm_nothing_is_said_and_what_no_source_takes_holds(double height, Severity? expected) =>
        Line(height, 40, LetterWork.Satin).Level("lettering.small").ShouldBe(expected);

    /// <summary>Row L14: an opening inside a letter is at least 0.9 mm across (the same page as L10).</summary>
    [Theory]
    [InlineData(0.9, false)]
    [InlineData(0.8, true)]
    public void Openings_are_nine_tenths_of_a_millimeter(double counter, bool warns) =>
        ((Line(6.4, 40, LetterWork.Satin) with
        {
            Known = line => line with { Glyphs = [.. line.Glyphs.Select(glyph => glyph with { CounterMm = counter })] },
        }).Level("lettering.counter") == Severity.Warn).ShouldBe(warns);

    /// <summary>Row L15: letters stand 0.5 to 1.0 mm apart (the same page as L10).</summary>
    [Theory]
    [InlineData(10, false)]
    [InlineData(5, false)]
    [InlineData(4, true)]
    public void Letters_stand_half_a_millimeter_apart(int gap, bool warns) =>
        (Lettered.Of(new TextToSew("ocean") { XHeight = 64, Gap = gap }).Level("lettering.gap") == Severity.Warn).ShouldBe(warns);

    private static bool Warns(double height, int weight, LetterWork work) =>
        Line(height, weight, work).Level("lettering.small") >= Severity.Warn;

    private static Lettered Line(double height, int weight, LetterWork work) =>
        Lettered.Of(new TextToSew("ocean") { XHeight = (int)Math.Round(height * 10), StrokeWidth = 8, Work = work }) with
        {
            Job = Job.Clean with
            {
                Ticket = Job.Clean.Ticket with { Threads = [new TicketThread { Block = 1, Name = "Navy", WeightWt = weight }] },
            },
        };
}
