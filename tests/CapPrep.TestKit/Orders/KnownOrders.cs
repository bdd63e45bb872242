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
