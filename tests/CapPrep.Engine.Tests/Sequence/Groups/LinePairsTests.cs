using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Search;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Sequence.Groups;

/// <summary>How the letters of a line are weighed against each other.</summary>
public sealed class LinePairsTests
{
    [Fact]
    public void A_letter_of_two_elements_weighs_as_much_as_one_of_one()
    {
        // On the left two letters, the outer one in two elements; on the right two, sewn inward.
        LinePlace[] line = [new(0, -100, false), new(1, -200, false), new(2, -200, false), new(3, 200, false), new(4, 100, false)];

        Share(line, [0, 1, 2, 3, 4]).ShouldBe(0.5, 0.0001);
    }

    [Fact]
    public void Letters_in_one_element_count_by_when_they_are_sewn()
    {
        LinePlace[] line = [new(0, 100, false) { First = 50 }, new(0, 200, false) { First = 10 }, new(1, 300, false) { First = 90 }];

        Share(line, [0, 1]).ShouldBe(1 / 3.0, 0.0001);
    }

    private static double Share(LinePlace[] line, int[] place)
    {
        var pairs = LinePairs.Of(line, new int[place.Length], Precedence.Of(place.Length, []));
        return (double)pairs.Wrong(place) / pairs.Weight;
    }
}
