using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks;

/// <summary>Published size limits of cap fronts against what the checks say. Inches are turned into mm here.</summary>
public sealed class PublishedLimitTests
{
    private const double Inch = 25.4;

    private static readonly Job FreeOfTopLine = Job.Clean.WithFront(zone => zone with { TopLine = [] });

    /// <summary>
    /// Row F03: a cap front takes 55 mm of height (Tips for baseball cap embroidery, Printwear and Promotion, January
    /// 2021, https://content.yudu.com/web/69r/0Aiy7n/PPJan2021/html/44.html).
    /// </summary>
    [Theory]
    [InlineData(55.0, null)]
    [InlineData(55.1, Severity.Warn)]
    public void Above_55_mm_of_height_a_warn(double height, Severity? expected) =>
        Level("place.too-tall", 60, height).ShouldBe(expected);

    /// <summary>Row F03, same page: and 150 mm of width.</summary>
    [Theory]
    [InlineData(150.0, Severity.Warn)]
    [InlineData(150.2, Severity.Hold)]
    public void Above_150_mm_of_width_a_hold(double width, Severity? expected) =>
        Level("place.too-wide", width, 30).ShouldBe(expected);

    /// <summary>Row F04: a structured cap of low profile takes 2.5 in on a standard frame (a maker's guide, grade C).</summary>
    [Theory]
    [InlineData(2.5 * Inch, Severity.Warn)]
    [InlineData((2.5 * Inch) + 0.1, Severity.Hold)]
    public void Above_two_and_a_half_inches_of_height_a_hold(double height, Severity? expected) =>
        Level("place.too-tall", 60, height).ShouldBe(expected);

    /// <summary>Row F22: the base at least 1/2 in above the brim seam (training pages of two shops, grade D).</summary>
    [Theory]
    [InlineData(0.5 * Inch, null)]
    [InlineData((0.5 * Inch) - 0.1, Severity.Note)]
    public void Below_half_an_inch_above_the_brim_a_note(double above, Severity? expected) => AboveBrim(above).ShouldBe(expected);

    /// <summary>
    /// Row F23: about 10 mm is the closest (Hesitant to take on embroidery on caps?, Printwear and Promotion,
    /// https://printwearandpromotion.co.uk/hesitant-to-take-of-embroidery-on-caps/).
    /// </summary>
    [Theory]
    [InlineData(10.0, Severity.Note)]
    [InlineData(9.9, Severity.Warn)]
    public void Below_10_mm_above_the_brim_a_warn(double above, Severity? expected) => AboveBrim(above).ShouldBe(expected);

    [Fact]
    public void A_published_limit_names_its_source()
    {
        var limit = (Job.Clean with { Tape = Stitched.Seated(1300, 300) }).Finding("place.too-wide")!.Limit;

        limit.Kind.ShouldBe(LimitKind.Published);
        limit.Source!.Row.ShouldBe("F03");
        limit.Source.Publisher.ShouldNotBeEmpty();
        limit.SetBy.Id.ShouldBe(HouseBook.BookId);
    }

    [Fact]
    public void A_limit_of_the_shops_own_names_its_book_and_no_source()
    {
        var book = new RuleBook
        {
            Id = "harbor",
            Name = "Harbor",
            Rules = [new RuleChange("place.too-wide") { Limits = [new LimitChange(Severity.Warn, 70, false)] }],
        };

        var finding = (Job.Clean with { Book = book }).Finding("place.too-wide")!;

        finding.Limit.SetBy.ShouldBe(new Engine.Checks.VersionedId("harbor", 4));
        finding.Limit.Value.ShouldBe(70);
        finding.Limit.Kind.ShouldBe(LimitKind.House);
        finding.Limit.Source.ShouldBeNull();
        finding.Remedy!.Message.ShouldBe("Make the design at most 70 mm wide, or order it as a wrap.");
    }

    private static Severity? Level(string rule, double width, double height) =>
        (FreeOfTopLine with { Tape = Stitched.Seated((int)Math.Round(width * 10), (int)Math.Round(height * 10)) }).Finding(rule)?.Severity;

    private static Severity? AboveBrim(double mm) =>
        Job.Clean.Seating(new TicketSeating { BaseAboveBrimMm = mm }).Finding("place.brim-clearance")?.Severity;
}
