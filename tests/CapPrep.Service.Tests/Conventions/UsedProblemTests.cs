using System.Text.RegularExpressions;
using CapPrep.Service.Plumbing;
using CapPrep.TestKit.Documents;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Conventions;

public sealed class UsedProblemTests
{
    [Fact]
    public void Every_problem_of_the_list_is_given_somewhere_in_the_code()
    {
        var given = SourceFile.All
            .Where(file => !file.Path.EndsWith("Plumbing/Problems.cs", StringComparison.Ordinal) && !file.Path.Contains("/Docs/", StringComparison.Ordinal))
            .SelectMany(file => Regex.Matches(file.Text, @"\bProblems\.(\w+)").Select(match => match.Groups[1].Value))
            .ToHashSet();

        typeof(Problems).GetFields().Where(field => field.FieldType == typeof(Problem)).Select(field => field.Name)
            .Where(name => !given.Contains(name))
            .ShouldBeEmpty();
    }

    /// <summary>
    /// A method that an address does not take is no operation, so it has no place in the document; what is wrong with
    /// files in a hot folder is no answer to a request.
    /// </summary>
    [Fact]
    public void Every_problem_is_documented_at_some_operation()
    {
        var documented = Composition.Contract.Operations
            .SelectMany(operation => operation.Responses)
            .SelectMany(answer => answer.Value!["content"]?["application/problem+json"]?["examples"]?.AsObject().Select(example => example.Key) ?? [])
            .Append(Problems.MethodNotAllowed.Code)
            .Append(Problems.DropInvalid.Code)
            .ToHashSet();

        Problems.All.Select(problem => problem.Code).Where(code => !documented.Contains(code)).ShouldBeEmpty();
    }
}
