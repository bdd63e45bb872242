namespace CapPrep.Engine.Pieces;

/// <summary>When one thing lies over another so that their order counts.</summary>
internal static class Layers
{
    // Different threads: four cells, 0.25 mm2, whatever the share.
    private const int CellsAcrossThreads = 4;

    // One thread: 1 mm2 or a tenth of the smaller.
    private const int CellsInThread = Cover.CellsPerSquareMillimeter;
    private const int ShareInThread = 10;

    // Neighbors that may change places share at most a quarter of the smaller.
    private const int NeighborShare = 4;

    // What hides a tenth of a way or about 2 mm of it must go on hiding it.
    private const int HidingShare = 10;
    private const int HidingCells = 6;

    /// <summary>Two parts of one thread with this many cells in common show a change of their order.</summary>
    public static bool Count(bool sameThread, int shared, int smaller) => sameThread
        ? shared >= CellsInThread || (shared > 0 && shared * ShareInThread >= smaller)
        : shared >= CellsAcrossThreads;

    /// <summary>Cells of a way that something sewn later covers are enough to hide it.</summary>
    public static bool Hides(int shared, int way) => shared >= HidingCells || (shared > 0 && shared * HidingShare >= way);

    /// <summary>
    /// Two areas of one thread that look the same whichever comes first: sections of one fill, strokes of one letter.
    /// </summary>
    public static bool MayChangePlaces(Part one, Part other) =>
        one.Kind == other.Kind
        && one is { Kind: ElementKind.Satin or ElementKind.Fill, IsPure: true }
        && other.IsPure
        && one.Axis.IsDirected && other.Axis.IsDirected
        && one.Axis.IsWithin30Degrees(other.Axis)
        && one.Cover.Shared(other.Cover) * NeighborShare <= Math.Min(one.Cover.Area, other.Cover.Area);
}
