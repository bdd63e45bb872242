using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Groups;
using CapPrep.Engine.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Groups;

/// <summary>Which elements are parts of one thing, so that nobody asks which of them comes first.</summary>
public sealed class SewnAreasTests
{
    private static readonly Box Lower = new(-200, 0, 200, 100);

    [Theory]
    [InlineData(0, true)]
    [InlineData(8, true)]
    [InlineData(20, false)]
    public void Parts_of_a_fill_go_on_within_a_millimeter(int gap, bool areOne) =>
        FillsAreOne(new Draft().Boxes(Lower, new Box(-200, 100 + gap, 200, 200 + gap))).ShouldBe([areOne]);

    [Fact]
    public void Two_colors_are_two_fills()
    {
        var draft = new Draft().Boxes(Lower).ColorStop().Move(new(-200, 100)).Boxes(new Box(-200, 100, 200, 200));

        FillsAreOne(draft).ShouldBe([false]);
    }

    [Fact]
    public void A_part_that_connects_two_others_makes_them_one() =>
        FillsAreOne(new Draft().Boxes(new Box(-300, 0, -100, 100), new Box(100, 0, 300, 100), new Box(-300, 100, 300, 200))).ShouldBe([true, true]);

    [Theory]
    [InlineData(-40, true)]
    [InlineData(-120, false)]
    public void A_thin_stroke_belongs_to_the_word_right_above_it(int foot, bool belongs)
    {
        var areas = Read(Word().Trim(new(-200, foot)).Sew(Stroke(foot, 15))).Areas;

        areas.IsUnderline(3).ShouldBe(belongs);
        areas.AreOne(0, 3).ShouldBe(belongs);
        areas.AreOne(0, 2).ShouldBeFalse();
    }

    [Fact]
    public void A_thick_bar_is_no_stroke() =>
        Read(Word().Trim(new(-200, -70)).Sew(Stroke(-70, 45))).Areas.IsUnderline(3).ShouldBeFalse();

    [Fact]
    public void A_stroke_of_another_color_is_a_thing_of_its_own() =>
        Read(Word().ColorStop().Move(new(-200, -40)).Sew(Stroke(-40, 15))).Areas.IsUnderline(3).ShouldBeFalse();

    private static Draft Word() => new[] { -150, 0, 150 }.Aggregate(
        new Draft(),
        (draft, x) => draft.Trim(new(x, 0)).Sew(Column.Upright(new(x, 0), 30, 120)));

    private static Column Stroke(int foot, int thick) => new(
        new([new(-200, foot), new(200, foot)]),
        new([new(-200, foot + thick), new(200, foot + thick)]));

    /// <summary>Of the first fill and every other.</summary>
    private static bool[] FillsAreOne(Draft draft)
    {
        var (elements, areas) = Read(draft);
        Element[] fills = [.. elements.Where(element => element.Kind == ElementKind.Fill)];
        return [.. fills.Skip(1).Select(fill => areas.AreOne(fills[0].Index, fill.Index))];
    }

    private static (IReadOnlyList<Element> Elements, SewnAreas Areas) Read(Draft draft)
    {
        var elements = DesignReader.Read(StitchSequence.Of(draft.ToTape("TEST"), 3)).Elements;
        return (elements, SewnAreas.Of(elements));
    }
}
