using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>
/// A straight way cut into records: record k ends at from + floor(k d / count), rounded toward minus infinity on
/// each axis, so that the shares add up and differ by at most one unit.
/// </summary>
internal readonly record struct MoveSplit(TapePoint From, TapePoint To, int Count)
{
    /// <summary>The fewest records that keep each move within a limit, at least one.</summary>
    /// <param name="maxMove">Longest move of one record per axis, tape units.</param>
    public static MoveSplit Within(TapePoint from, TapePoint to, int maxMove) =>
        new(from, to, Math.Max(1, RecordsFor((to - from).Reach, maxMove)));

    /// <summary>Records that a way takes, 0 for none.</summary>
    public static int RecordsFor(int reach, int maxMove) => (reach + maxMove - 1) / maxMove;

    /// <summary>Where record <paramref name="k"/> ends, 1 to <see cref="Count"/>; 0 is the start.</summary>
    public TapePoint At(int k) => new(
        From.X + FloorShare(To.X - From.X, k), From.Y + FloorShare(To.Y - From.Y, k));

    private int FloorShare(int distance, int k)
    {
        var (quotient, remainder) = Math.DivRem((long)distance * k, Count);
        return (int)(remainder < 0 ? quotient - 1 : quotient);
    }
}
