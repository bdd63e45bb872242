namespace CapPrep.Drawing.Sheets;

/// <summary>A point of a sheet in 0.01 mm, x from the left edge, y from the top edge downward.</summary>
public readonly record struct SheetPoint(int X, int Y)
{
    public SheetPoint Move(int dx, int dy) => new(X + dx, Y + dy);
}

/// <summary>A box of a sheet in 0.01 mm, from its upper left corner.</summary>
public readonly record struct SheetBox(int X, int Y, int Width, int Height)
{
    public int Right => X + Width;

    public int Bottom => Y + Height;

    public SheetPoint Center => new(X + (Width / 2), Y + (Height / 2));

    /// <summary>The same box smaller by so much on every side.</summary>
    public SheetBox Inset(int by) => new(X + by, Y + by, Width - (2 * by), Height - (2 * by));

    /// <summary>The upper part of that height.</summary>
    public SheetBox TopPart(int height) => this with { Height = height };

    /// <summary>What is left below the upper part of that height.</summary>
    public SheetBox Below(int height) => new(X, Y + height, Width, Height - height);

    /// <summary>The left part of that width.</summary>
    public SheetBox LeftPart(int width) => this with { Width = width };

    /// <summary>What is left to the right of the left part of that width.</summary>
    public SheetBox RightOf(int width) => new(X + width, Y, Width - width, Height);

    public bool Contains(SheetPoint point) =>
        point.X >= X && point.X <= Right && point.Y >= Y && point.Y <= Bottom;

    public bool Contains(SheetBox other) =>
        other.X >= X && other.Right <= Right && other.Y >= Y && other.Bottom <= Bottom;

    /// <summary>The smallest box round both.</summary>
    public SheetBox Union(SheetBox other)
    {
        var (x, y) = (Math.Min(X, other.X), Math.Min(Y, other.Y));
        return new SheetBox(x, y, Math.Max(Right, other.Right) - x, Math.Max(Bottom, other.Bottom) - y);
    }

    public bool Overlaps(SheetBox other) =>
        X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;
}
