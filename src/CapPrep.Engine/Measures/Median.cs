namespace CapPrep.Engine.Measures;

/// <summary>The middle value of whole numbers; of an even count the upper one of the two.</summary>
internal static class Median
{
    /// <param name="values">At least one.</param>
    public static int Of(ReadOnlySpan<int> values) =>
        values.Length <= 8 ? OfFew(values) : values.ToArray().Order().ElementAt(values.Length / 2);

    /// <summary>Three quarters of the values are no larger.</summary>
    /// <param name="values">At least one.</param>
    public static int UpperQuartile(IReadOnlyCollection<int> values) => values.Order().ElementAt(values.Count * 3 / 4);

    private static int OfFew(ReadOnlySpan<int> values)
    {
        Span<int> sorted = stackalloc int[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var hole = i;
            for (; hole > 0 && sorted[hole - 1] > values[i]; hole--)
                sorted[hole] = sorted[hole - 1];
            sorted[hole] = values[i];
        }

        return sorted[values.Length / 2];
    }
}
