namespace CapPrep.Engine.Measures;

/// <summary>A point in tape units (0.1 mm), x to the viewer's right, y up the crown.</summary>
public readonly record struct TapePoint(int X, int Y)
{
    public static readonly TapePoint Origin = new(0, 0);

    public static TapePoint operator +(TapePoint a, TapePoint b) => new(a.X + b.X, a.Y + b.Y);

    public static TapePoint operator -(TapePoint a, TapePoint b) => new(a.X - b.X, a.Y - b.Y);
}
