using CapPrep.Service.Plumbing;
using CapPrep.TestKit.Service;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

public sealed class ProblemTests
{
    /// <summary>Shape of a code: what a type ends with must be fit for an address.</summary>
    private const string CodeForm = "^[a-z]+(-[a-z]+)*$";

    [Fact]
    public void Codes_are_unique_and_fit_for_an_address()
    {
        Problems.All.Select(problem => problem.Code).ShouldBeUnique();
        foreach (var problem in Problems.All)
            problem.Code.ShouldMatch(CodeForm);
    }

    [Fact]
    public async Task Every_problem_has_its_page()
    {
        await using var service = await ServiceUnderTest.Start();
        using var client = service.ClientWith(null);

        foreach (var problem in Problems.All)
        {
            var page = await client.GetStringAsync($"/docs/problems/{problem.Code}", TestContext.Current.CancellationToken);
            page.ShouldContain(System.Net.WebUtility.HtmlEncode(problem.Help));
        }
    }
}
