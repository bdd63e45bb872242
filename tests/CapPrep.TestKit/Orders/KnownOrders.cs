namespace CapPrep.TestKit.Orders;

/// <summary>Ordering problems whose best value is known.</summary>
public static class KnownOrders
{
    /// <summary>
    /// Paley tournament: of i and a later j, i beats j when j - i is a square modulo the prime, else j beats i. The
    /// instances pal11 to pal31 of the public library LOLIB (R. Marti, G. Reinelt, "The Linear Ordering Problem", 2011)
    /// are these.
    /// </summary>
    public static long[,] Paley(int prime)
    {
        var squares = Enumerable.Range(1, prime - 1).Select(root => root * root % prime).ToHashSet();
        return Matrix(prime, (i, j) => squares.Contains(Math.Abs(j - i)) == i < j ? 1 : 0);
    }

    /// <summary>
    /// A wall of letters on a cap, three rows of three; 3 * row + column, row 0 at the brim, column 1 on the seam. The
    /// higher of two before the lower costs 2; in one row the outer before the inner costs 1.
    /// </summary>
    public static long[,] CapGrid() => Matrix(9, (i, j) =>
        i / 3 > j / 3 ? 2 : i / 3 == j / 3 && Math.Abs((i % 3) - 1) > Math.Abs((j % 3) - 1) ? 1 : 0);

    /// <summary>
    /// The instance ESC07 of the public library TSPLIB (sequential ordering problems): way from row to column, and -1
    /// where the column comes before the row. The shortest way through all nine is 2125 long, as the library says.
    /// </summary>
    public static readonly long[,] Esc07 =
    {
        { 0, 0, 0, 0, 0, 0, 0, 0, 1_000_000 },
        { -1, 0, 100, 200, 75, 0, 300, 100, 0 },
        { -1, 400, 0, 500, 325, 400, 600, 0, 0 },
        { -1, 700, 800, 0, 550, 700, 900, 800, 0 },
        { -1, -1, 250, 225, 0, 275, 525, 250, 0 },
        { -1, -1, 100, 200, -1, 0, -1, -1, 0 },
        { -1, -1, 1100, 1200, 1075, 1000, 0, 1100, 0 },
        { -1, -1, 0, 500, 325, 400, 600, 0, 0 },
        { -1, -1, -1, -1, -1, -1, -1, -1, 0 },
    };

    /// <summary>What is left to pay when the sum above the diagonal shall be as large as possible.</summary>
    public static long[,] ToCost(long[,] gain) => Matrix(gain.GetLength(0), (i, j) => gain[j, i]);

    public static long Total(long[,] matrix)
    {
        long sum = 0;
        for (var i = 0; i < matrix.GetLength(0); i++)
        {
            for (var j = 0; j < matrix.GetLength(1); j++)
                sum += i == j ? 0 : matrix[i, j];
        }

        return sum;
    }

    public static long[,] Matrix(int count, Func<int, int, long> value)
    {
        var matrix = new long[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
                matrix[i, j] = i == j ? 0 : value(i, j);
        }

        return matrix;
    }
}
