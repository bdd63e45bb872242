using CapPrep.Engine.Trade;
using CapPrep.FaultCorpus;
using CapPrep.TestKit.Faults;
using Shouldly;
using Xunit;
using Designs = CapPrep.FaultCorpus.Corpus;

namespace CapPrep.Engine.Tests.Corpus;

/// <summary>
/// Nine layouts as they are sewn on caps (common practice, no source): each from the bottom up and from the center out,
/// its bottom line first.
/// </summary>
public sealed class NineLayoutsTests
{
    private const int OfEach = 4;

    public static TheoryData<string> Layouts =>
    [
        "crest over tagline", "monogram", "arc text", "three lines", "wide line", "patch", "roundel", "script", "grid",
    ];

    /// <summary>Those in which nothing may be sewn either way round.</summary>
    public static TheoryData<string> Exact => ["crest over tagline", "monogram", "script"];

    [Theory]
    [MemberData(nameof(Exact))]
    public void A_layout_as_it_is_sewn_on_caps_costs_nothing(string layout)
    {
        for (var number = 0; number < OfEach; number++)
        {
            var shares = Prepare(Designs.Clean(layout, number)).Order.ShouldNotBeNull().Received.Shares;
            shares.OrderIndex.ShouldBe(0, $"{layout} {number}");
            shares.LineIndexMax.ShouldBe(0, $"{layout} {number}");
            shares.TaglineLate.ShouldBe(0, $"{layout} {number}");
        }
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void And_no_order_rule_warns_of_any_of_them(string layout)
    {
        for (var number = 0; number < OfEach; number++)
        {
            var warned = Prepare(Designs.Clean(layout, number)).Order.ShouldNotBeNull().ReceivedRules
                .Where(rule => rule.Severity >= Severity.Warn);
            warned.ShouldBeEmpty($"{layout} {number}");
        }
    }

    private static Preparation Prepare(CorpusTape tape) => CapPrepper.Prepare(CorpusOrder.Request(tape));
}
