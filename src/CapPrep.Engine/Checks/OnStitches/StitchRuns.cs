namespace CapPrep.Engine.Checks.OnStitches;

/// <summary>Gathers penetrations that follow each other closely in time: what is sewn together is one place.</summary>
internal static class StitchRuns
{
    // So many penetrations further on it still is the same place (house).
    private const int Near = 10;

    /// <param name="points">Penetrations counted from 0, rising.</param>
    internal static IEnumerable<IReadOnlyList<int>> Of(IEnumerable<int> points)
    {
        var run = new List<int>();
        foreach (var point in points)
        {
            if (run.Count > 0 && point > run[^1] + Near)
            {
                yield return run;
                run = [];
            }

            run.Add(point);
        }

        if (run.Count > 0)
            yield return run;
    }
}
