using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Checks;

public sealed class RuleCaseTests
{
    public static TheoryData<string> Rules => [.. Embedded.HouseBook.Rows.Select(row => row.Rule)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_rule_row_has_a_passing_and_a_failing_tape(string rule)
    {
        RuleCases.All.Keys.ShouldContain(rule + RuleCases.Pass);
        RuleCases.All.Keys.ShouldContain(rule + RuleCases.Fail);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_is_silent_at_its_passing_tape(string rule) =>
        RuleCases.All[rule + RuleCases.Pass].Finding(rule).ShouldBeNull();

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_speaks_at_its_failing_tape(string rule)
    {
        var finding = RuleCases.All[rule + RuleCases.Fail].Finding(rule).ShouldNotBeNull();

        finding.Count.ShouldBePositive();
        finding.Places.ShouldNotBeEmpty();
        finding.Message.ShouldEndWith(".");
        finding.Limit.Level.ShouldBe(finding.Severity);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void No_case_is_without_its_rule(string rule) =>
        Inspector.Checks.Count(check => check.Rule == rule).ShouldBe(1);

    [Fact]
    public void Every_function_belongs_to_a_rule_row() =>
        Inspector.Checks.Select(check => check.Rule).Order()
            .ShouldBe(Embedded.HouseBook.Rows.Select(row => row.Rule).Order());

    [Fact]
    public void Every_case_belongs_to_a_rule_row() =>
        RuleCases.All.Keys.Select(name => name[..name.LastIndexOf('_')]).Distinct().Order()
            .ShouldBe(Embedded.HouseBook.Rows.Select(row => row.Rule).Order());
}
