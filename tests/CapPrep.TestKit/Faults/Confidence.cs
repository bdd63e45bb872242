namespace CapPrep.TestKit.Faults;

/// <summary>What a count of faults allows to say about the share behind it.</summary>
public static class Confidence
{
    /// <summary>
    /// Upper 95 % limit of a share, one-sided, exact (C. Clopper, E. Pearson, Biometrika 26, 1934): the share at which so few
    /// hits, or fewer, come in one of twenty trials. With no hit it is 1 - 0.05^(1/n), the "rule of three" 3/n.
    /// </summary>
    public static double UpperLimit(int hits, int trials)
    {
        if (trials == 0 || hits >= trials)
            return 1;
        var (low, high) = ((double)hits / trials, 1.0);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            (low, high) = AtMost(hits, trials, middle) > 0.05 ? (middle, high) : (low, middle);
        }

        return high;
    }

    private static double AtMost(int hits, int trials, double share)
    {
        var term = Math.Exp(trials * Math.Log(1 - share));
        var sum = term;
        for (var k = 0; k < hits; k++)
        {
            term *= (trials - k) * share / ((k + 1) * (1 - share));
            sum += term;
        }

        return sum;
    }
}
