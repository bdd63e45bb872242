using CapPrep.Engine.Checks.OnTechnique;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks.OnTechnique;

/// <summary>What is said is read abroad: short sentences, figures with their unit.</summary>
public sealed class TechniqueSentenceTests
{
    private const int MostWords = 15;

    public static TheoryData<string> Rules => [.. TechniqueChecks.All.Select(check => check.Rule), "ticket.technique"];

    [Theory]
    [MemberData(nameof(Rules))]
    public void No_sentence_has_more_than_15_words(string rule)
    {
        var finding = RuleCases.All[rule + RuleCases.Fail].Finding(rule).ShouldNotBeNull();

        foreach (var text in new[] { finding.Message, finding.Remedy!.Message, Embedded.HouseBook.Find(rule)!.Says })
            text.Split(". ").ShouldAllBe(sentence => sentence.Split(' ').Length <= MostWords, text);
    }
}
