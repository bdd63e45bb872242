using CapPrep.Engine.Drafting;
using CapPrep.Engine.Pieces;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

public sealed class RoleTests
{
    [Fact]
    public void Underlay_of_a_column_goes_with_the_column()
    {
        var reading = Read.Of(new Draft().Sew(Read.Column(0, 0)));

        var element = reading.Elements.ShouldHaveSingleItem();
        element.Kind.ShouldBe(ElementKind.Satin);
        reading.Spans[0].Role.ShouldBe(SpanRole.Underlay);
        reading.Spans[0].Piece.ShouldBe(0);
        reading.Pieces.ShouldHaveSingleItem().First.ShouldBe(reading.Spans[0].Last + 1);
    }

    [Fact]
    public void Open_rows_under_a_fill_are_its_underlay()
    {
        var reading = Read.Of(new Draft().Sew(Read.Fill(0, 0, 300, 200)));

        reading.Elements.ShouldHaveSingleItem().Kind.ShouldBe(ElementKind.Fill);
        reading.Spans.Where(span => span.Role == SpanRole.Underlay).Sum(span => span.Penetrations).ShouldBeInRange(60, 90);
        reading.Pieces.ShouldHaveSingleItem().Class.ShouldBe(StitchClass.Fill);
    }

    [Fact]
    public void A_tie_is_known_and_stays_with_its_column()
    {
        var reading = Read.Of(new Draft().Stitch(Read.At(0, 0)).Tie(Read.At(15, 75)).Sew(Read.Column(0, 0)));

        reading.Spans[0].Role.ShouldBe(SpanRole.Tie);
        reading.Elements.ShouldHaveSingleItem().First.ShouldBe(0);
    }

    [Fact]
    public void Travel_that_a_later_fill_of_the_thread_hides_is_a_link_that_may_be_dropped()
    {
        var reading = Read.Of(UnderFill());

        reading.Elements.Select(element => element.Kind).ShouldBe([ElementKind.Satin, ElementKind.Satin, ElementKind.Fill]);
        var link = reading.Links[0];
        (link.Before, link.After, link.MayBeDropped).ShouldBe((0, 1, true));
        reading.Spans.Where(span => span.Element is null).ShouldContain(span => span.Role == SpanRole.HiddenTravel);
        reading.MustFollow.ShouldContain(pair => pair.Before == 1 && pair.After == 2);
    }

    [Fact]
    public void Travel_that_another_thread_hides_may_not_be_dropped()
    {
        var reading = Read.Of(UnderFill(stopBeforeFill: true));

        reading.Elements.Count.ShouldBe(2);
        reading.Elements[0].Kind.ShouldBe(ElementKind.Satin);
        reading.Links.ShouldBeEmpty();
        reading.MustFollow.ShouldHaveSingleItem().ShouldSatisfyAllConditions(
            pair => pair.Before.ShouldBe(0), pair => pair.After.ShouldBe(1));
    }

    [Fact]
    public void Travel_that_shows_keeps_two_columns_together()
    {
        var reading = Read.Of(new Draft()
            .Sew(Read.Column(0, 0)).Run(25, Read.At(30, 150), Read.At(300, 0)).Sew(Read.Column(300, 0)));

        reading.Elements.ShouldHaveSingleItem();
        reading.Pieces.Select(piece => piece.Class).ShouldBe([StitchClass.Satin, StitchClass.Running, StitchClass.Satin]);
    }

    [Fact]
    public void Travel_over_stitches_of_its_own_thread_is_on_top()
    {
        var reading = Read.Of(new Draft().Sew(Read.Fill(0, 0, 400, 200) with { UnderlayPitch = 0 })
            .Trim(Read.At(30, 40)).Sew(Read.Column(30, 40, height: 120))
            .Run(25, Read.At(60, 160), Read.At(300, 40)).Sew(Read.Column(300, 40, height: 120) with { UnderlayStitch = 0 }));

        reading.Spans.ShouldContain(span => span.Role == SpanRole.TravelOnTop);
        reading.Elements.Count.ShouldBe(2);
        reading.Links.ShouldBeEmpty();
    }

    [Fact]
    public void Underlay_of_a_whole_word_is_an_element_of_its_own_before_every_letter()
    {
        var draft = new Draft().Run(25, Read.At(5, 75), Read.At(25, 75), Read.At(5, 60));
        draft.Run(25, Read.At(5, 60), Read.At(5, 20), Read.At(95, 20), Read.At(95, 130), Read.At(5, 130), Read.At(5, 75));
        foreach (var x in new[] { 60, 0, 30 })
            draft.Trim(Read.At(x, 0)).Sew(Read.Column(x, 0, width: 40));

        var reading = Read.Of(draft);

        reading.Elements.Select(element => element.Kind)
            .ShouldBe([ElementKind.Underlay, ElementKind.Satin, ElementKind.Satin, ElementKind.Satin]);
        foreach (var letter in new[] { 1, 2, 3 })
            reading.MustFollow.ShouldContain(pair => pair.Before == 0 && pair.After == letter);
    }

    [Fact]
    public void A_line_partly_under_a_later_fill_is_cut_where_it_goes_under()
    {
        var reading = Read.Of(new Draft().Run(25, Read.At(-200, 50), Read.At(50, 50))
            .Trim(Read.At(0, 0)).Sew(Read.Fill(0, 0, 300, 100)));

        reading.Spans.Take(2).Select(span => span.Role).ShouldBe([SpanRole.Visible, SpanRole.HiddenTravel]);
        reading.Spans[0].Last.ShouldBe(8);
    }

    /// <summary>Two columns, the way between them along the lower edge of a fill that is sewn over it last.</summary>
    private static Draft UnderFill(bool stopBeforeFill = false)
    {
        var draft = new Draft().Sew(Read.Column(0, 0)).Stitch(Read.At(45, 140))
            .Run(25, Read.At(45, 140), Read.At(285, 140)).Sew(Read.Column(300, 0));
        if (stopBeforeFill)
            draft.ColorStop();
        return draft.Trim(Read.At(35, 100)).Sew(Read.Fill(35, 100, 295, 400));
    }
}
