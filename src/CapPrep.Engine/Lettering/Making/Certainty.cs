using CapPrep.Engine.Lettering.Letters;
using CapPrep.Engine.Lettering.Search;
using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Says whether a line is found without doubt. House; by looking at real designs.</summary>
internal static class Certainty
{
    // So many letters stand on the line and reach a height, percent; of three letters all do.
    private const int ClearShare = 80;

    // Bare cloth between letters, percent of their height; fewer than six are few.
    private const int Many = 6;
    private const int WideGap = 50;

    private const int FewestSatin = 3;
    private const int FewestLine = 5;
    private const int FewestJoined = 6;

    public static bool IsSure(LetterMake make, Candidate line, bool isConnected)
    {
        var letters = line.Letters.Where(letter => !letter.IsSign).ToList();
        var fewest = isConnected ? FewestJoined : make == LetterMake.Satin ? FewestSatin : FewestLine;
        return letters.Count >= fewest
            && 100 * letters.Count(letter => letter.Stands) >= ClearShare * letters.Count
            && 100 * letters.Count(letter => line.Levels.IsNear(letter.Top)) >= ClearShare * letters.Count
            && !line.IsSteep
            && StandClose(letters, line.Levels);
    }

    /// <summary>No gap among a few letters is wide, nor the middle one among many.</summary>
    private static bool StandClose(IReadOnlyList<Letter> letters, Levels levels)
    {
        int[] gaps = [.. letters.Zip(letters.Skip(1), (letter, next) => next.Group.Reach.From - letter.Group.Reach.To)];
        return 100L * (letters.Count < Many ? gaps.Max() : Median.Of(gaps)) <= WideGap * (long)levels.Low;
    }
}
