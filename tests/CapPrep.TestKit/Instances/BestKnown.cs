using System.Globalization;

namespace CapPrep.TestKit.Instances;

/// <summary>The best value known of a published ordering problem.</summary>
/// <param name="Value">Linear ordering: the largest sum; sequential ordering: the shortest way.</param>
/// <param name="IsOptimal">It is proven that no order is better.</param>
public sealed record BestKnown(long Value, bool IsOptimal)
{
    /// <summary>
    /// Linear ordering. The matrices of input and output and the small special ones are solved, says R. Marti, G. Reinelt,
    /// "The Linear Ordering Problem" (2011); aleaSum was solved by dynamic programming over all subsets; the others are
    /// the best values of the public repository carlossegurag/LOP_MA-EDM, each of whose orders was evaluated again.
    /// </summary>
    public static IReadOnlyDictionary<string, BestKnown> LinearOrdering { get; } = Table(
        "pal11 35 pal13 57 pal19 107 pal23 161 atp24 172 aleaSum100-20-ex1 11944 aleaSum100-20-ex2 11889 "
        + "aleaSum100-20-ex3 11865 t59n11xx 20928 t65l11xx 16719 t59b11xx 209320 t70l11xx 25253 be75eec 236464 "
        + "tiw56n54 91554 stabu70 362512 usa79 1813986",
        "econ36 548574 p40-01 29457 p40-20 39658 sgb75.01 2724126 t1d100.01 106852");

    /// <summary>
    /// Sequential ordering, TSPLIB and SOPLIB06. The first were solved by dynamic programming over ideals and the item
    /// visited last; the others are best values listed in a public solver's source after L. M. Gambardella,
    /// R. Montemanni, D. Weyland, "Coupling ant colony systems with strong local searches" (2012).
    /// </summary>
    public static IReadOnlyDictionary<string, BestKnown> SequentialOrdering { get; } = Table(
        "ESC07 2125 ESC11 2075 ESC12 1675 br17.10 55 br17.12 55 ESC25 1681 p43.4 83005 ry48p.4 31446 ft53.4 14425",
        "ESC47 1288 ESC63 62 ESC78 18230 ft53.1 7531 ft53.2 8026 ft53.3 10262 ft70.1 39313 ft70.4 53530 p43.1 28140 "
        + "p43.2 28480 p43.3 28835 ry48p.1 15805 ry48p.2 16666 ry48p.3 19894 kro124p.4 76103 rbg048a 351 rbg050c 467 "
        + "prob.42 243 R.200.100.1 61 R.200.100.15 1792 R.200.100.30 4216 R.200.100.60 71749 R.200.1000.60 71556");

    /// <summary>Lines that begin with name, items and value, in place of or beside a table's.</summary>
    /// <exception cref="InvalidDataException">A line does not begin so.</exception>
    public static IReadOnlyDictionary<string, BestKnown> Read(string file, string text, IReadOnlyDictionary<string, BestKnown> table)
    {
        var all = new Dictionary<string, BestKnown>(table);
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (line.Split(' ', 4) is not [var name, _, var word, ..] || !long.TryParse(word, CultureInfo.InvariantCulture, out var value))
                throw new InvalidDataException($"{file}: '{line}' does not begin with name, items and value.");
            all[name] = new(value, table.TryGetValue(name, out var known) && known.IsOptimal && known.Value == value);
        }

        return all;
    }

    private static Dictionary<string, BestKnown> Table(string optimal, string best) =>
        Rows(optimal, isOptimal: true).Concat(Rows(best, isOptimal: false)).ToDictionary();

    private static IEnumerable<KeyValuePair<string, BestKnown>> Rows(string text, bool isOptimal) =>
        text.Split(' ').Chunk(2).Select(row =>
            KeyValuePair.Create(row[0], new BestKnown(long.Parse(row[1], CultureInfo.InvariantCulture), isOptimal)));
}
