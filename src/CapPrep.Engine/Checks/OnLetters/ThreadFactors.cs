namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>By what the thread changes the limits of letters, which are given for 40 wt.</summary>
internal static class ThreadFactors
{
    private const int FineWt = 60;
    private const int FinestWt = 75;

    /// <summary>Below 1 for thread finer than 40 wt, which fills less; coarser thread keeps the limits.</summary>
    internal static double OfWeight(LetterLine line, RuleInForce rule) => line.WeightWt switch
    {
        >= FinestWt => rule.Parameter("factor75wt"),
        >= FineWt => rule.Parameter("factor60wt"),
        _ => 1,
    };

    /// <summary>The thread in words, where it changes a limit; else nothing.</summary>
    internal static string Spoken(LetterLine line)
    {
        var weight = line.WeightWt >= FineWt ? $" {Figure.Plain(line.WeightWt, 0)} wt" : "";
        var kind = line.IsMetallic ? " metallic" : "";
        return weight.Length + kind.Length > 0 ? $" in{weight}{kind} thread" : "";
    }
}
