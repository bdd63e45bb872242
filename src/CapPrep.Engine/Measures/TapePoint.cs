namespace CapPrep.Engine.Measures;

/// <summary>A point in tape units (0.1 mm), x to the viewer's right, y up the crown.</summary>
public readonly record struct TapePoint(int X, int Y)
{
    public static readonly TapePoint Origin = new(0, 0);

    /// <summary>The larger of the two distances along the axes from (0, 0): what one record has to move.</summary>
    public int Reach => Math.Max(Math.Abs(X), Math.Abs(Y));

    /// <summary>The same point after a turn by 180 degrees about (0, 0).</summary>
    public TapePoint Turned() => new(-X, -Y);

    public static TapePoint operator +(TapePoint a, TapePoint b) => new(a.X + b.X, a.Y + b.Y);

    public static TapePoint operator -(TapePoint a, TapePoint b) => new(a.X - b.X, a.Y - b.Y);
}
