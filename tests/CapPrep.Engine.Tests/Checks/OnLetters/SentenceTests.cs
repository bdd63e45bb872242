using CapPrep.Engine.Checks.OnLetters;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

/// <summary>What is said of letters is read abroad: short sentences, figures with their unit.</summary>
public sealed class SentenceTests
{
    private const int MostWords = 15;

    public static TheoryData<string> Rules => [.. LetterChecks.All.Select(check => check.Rule)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void No_sentence_has_more_than_15_words(string rule)
    {
        var finding = RuleCases.All[rule + RuleCases.Fail].Finding(rule).ShouldNotBeNull();

        foreach (var text in new[] { finding.Message, finding.Remedy!.Message, Embedded.HouseBook.Find(rule)!.Says })
            text.Split(". ").ShouldAllBe(sentence => sentence.Split(' ').Length <= MostWords, text);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_place_is_a_box_on_the_cap_with_its_stitches(string rule)
    {
        var finding = RuleCases.All[rule + RuleCases.Fail].Finding(rule).ShouldNotBeNull();

        finding.Places.ShouldAllBe(place => place.BoxMm != null && place.BoxMm.Value.Width > 0 && place.Stitches != null && place.Blocks.Count == 1 && place.Elements.Count > 0);
    }
}
