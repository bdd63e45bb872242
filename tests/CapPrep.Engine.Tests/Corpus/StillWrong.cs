using CapPrep.TestKit;
using Shouldly;

namespace CapPrep.Engine.Tests.Corpus;

/// <summary>
/// What the engine is known to get wrong in the short form of the corpus, one line each; nothing may be added to it.
/// <c>CAPPREP_ACCEPT=1</c> takes out what came right.
/// </summary>
internal static class StillWrong
{
    private static readonly string FileName = Path.Combine(Repository.Root, "tests", "CapPrep.Engine.Tests", "Corpus", "still-wrong.txt");

    private static readonly Lock Gate = new();

    /// <param name="test">Name of the test, the first word of its lines.</param>
    internal static void AndNothingElse(this IEnumerable<string> wrong, string test)
    {
        var found = wrong.Select(line => $"{test}: {line}").Distinct().ToList();
        lock (Gate)
        {
            var known = File.ReadAllLines(FileName);
            found.Except(known).ShouldBeEmpty();
            if (Environment.GetEnvironmentVariable("CAPPREP_ACCEPT") == "1")
                File.WriteAllLines(FileName, known.Where(line => !line.StartsWith($"{test}: ", StringComparison.Ordinal) || found.Contains(line)));
        }
    }
}
