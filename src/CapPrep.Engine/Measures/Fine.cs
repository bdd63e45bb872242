namespace CapPrep.Engine.Measures;

/// <summary>Lengths in sixteenths of a tape unit (0.00625 mm): whole numbers where whole tape units are too coarse.</summary>
internal static class Fine
{
    /// <summary>Sixteenths in one tape unit.</summary>
    public const int PerTenth = 16;

    /// <summary>Sixteenths in one millimeter.</summary>
    public const int PerMillimeter = PerTenth * Tenths.PerMillimeter;

    /// <summary>Length of a vector in tape units, rounded down; a square root is exact by IEEE 754.</summary>
    public static long Length(long dx, long dy) => (long)Math.Sqrt((double)Square(dx, dy) * PerTenth * PerTenth);

    /// <summary>Length of a vector in tape units.</summary>
    public static long Length(TapePoint vector) => Length(vector.X, vector.Y);

    public static double Millimeters(long sixteenths) => sixteenths / (double)PerMillimeter;

    public static long Square(long dx, long dy) => (dx * dx) + (dy * dy);

    public static long Square(TapePoint vector) => Square(vector.X, vector.Y);

    public static long Dot(TapePoint a, TapePoint b) => ((long)a.X * b.X) + ((long)a.Y * b.Y);

    /// <summary>Positive when the second vector points to the left of the first.</summary>
    public static long Cross(TapePoint a, TapePoint b) => ((long)a.X * b.Y) - ((long)a.Y * b.X);
}
