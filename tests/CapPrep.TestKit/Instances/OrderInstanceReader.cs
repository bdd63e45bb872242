using System.Globalization;

namespace CapPrep.TestKit.Instances;

/// <summary>
/// Reads published ordering problems. Linear ordering, the format of LOLIB: a number n, then n x n numbers. Sequential
/// ordering, the format of TSPLIB (G. Reinelt, "TSPLIB 95"): a header up to EDGE_WEIGHT_SECTION, n, n x n numbers and
/// EOF; SOPLIB has the numbers alone. There, -1 in a row says that the column's item comes before the row's; the first
/// item comes first and the last one last.
/// </summary>
public static class OrderInstanceReader
{
    /// <summary>More items than any published problem of these libraries has.</summary>
    private const int MostItems = 1000;

    private const string Section = "EDGE_WEIGHT_SECTION";

    /// <exception cref="InvalidDataException">The text is no linear ordering problem; the message says why.</exception>
    public static OrderInstance LinearOrdering(string name, string text) =>
        new(name, Square(name, Numbers(name, Words(text))), []);

    /// <exception cref="InvalidDataException">The text is no sequential ordering problem; the message says why.</exception>
    public static OrderInstance SequentialOrdering(string name, string text)
    {
        var words = Words(Body(name, text)).ToArray();
        if (words is [.., "EOF"])
            words = words[..^1];
        var matrix = Square(name, Numbers(name, words));
        for (var i = 0; i < matrix.Length; i++)
            RefuseWay(name, i / matrix.GetLength(0), i % matrix.GetLength(0), matrix);
        return new(name, matrix, Pairs(name, matrix));
    }

    private static string Body(string name, string text)
    {
        var at = text.IndexOf(Section, StringComparison.Ordinal);
        if (at >= 0)
            return text[(at + Section.Length)..];
        return text.Contains(':', StringComparison.Ordinal)
            ? throw new InvalidDataException($"{name}: a header without {Section}.")
            : text;
    }

    private static IEnumerable<string> Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    private static List<long> Numbers(string name, IEnumerable<string> words)
    {
        var numbers = new List<long>();
        foreach (var word in words)
        {
            if (!int.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
                throw new InvalidDataException($"{name}: '{word}' at place {numbers.Count + 1} is no whole number of 32 bits.");
            numbers.Add(number);
        }

        return numbers;
    }

    private static long[,] Square(string name, List<long> numbers)
    {
        if (numbers is not [>= 1 and <= MostItems, ..])
            throw new InvalidDataException($"{name}: the first number, how many items there are, is not from 1 to {MostItems}.");
        var count = (int)numbers[0];
        if (numbers.Count - 1 != count * count)
            throw new InvalidDataException($"{name}: {numbers.Count - 1} numbers follow where {count} x {count} belong.");
        var matrix = new long[count, count];
        for (var i = 1; i < numbers.Count; i++)
            matrix[(i - 1) / count, (i - 1) % count] = numbers[i];
        return matrix;
    }

    private static void RefuseWay(string name, int row, int column, long[,] matrix)
    {
        if (matrix[row, column] < -1)
            throw new InvalidDataException($"{name}: the way {row} to {column} is {matrix[row, column]}; the least is -1.");
    }

    private static (int Before, int After)[] Pairs(string name, long[,] matrix)
    {
        var count = matrix.GetLength(0);
        var said = (int Before, int After) =>
            matrix[After, Before] == -1 || (Before == 0 && After > 0) || (After == count - 1 && Before < After);
        (int, int)[] pairs =
        [
            .. from after in Enumerable.Range(0, count)
               from before in Enumerable.Range(0, count)
               where before != after && said(before, after)
               select (before, after),
        ];
        return HasCycle(count, pairs) ? throw new InvalidDataException($"{name}: its pairs contradict each other.") : pairs;
    }

    /// <summary>Takes away what nothing must come before, again and again, until nothing is left.</summary>
    private static bool HasCycle(int count, (int Before, int After)[] pairs)
    {
        var waits = new int[count];
        foreach (var (_, after) in pairs)
            waits[after]++;
        var free = new Queue<int>(Enumerable.Range(0, count).Where(item => waits[item] == 0));
        var taken = 0;
        var followers = pairs.ToLookup(pair => pair.Before, pair => pair.After);
        for (; free.TryDequeue(out var item); taken++)
        {
            foreach (var after in followers[item].Where(after => --waits[after] == 0))
                free.Enqueue(after);
        }

        return taken < count;
    }
}
