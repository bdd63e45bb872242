using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Checks.OnBorders;

/// <summary>
/// Finds what borders which fill: columns and lines of one thread, sewn later, over at least half of the fill's rim, that
/// leave its middle open. What is hidden itself, or sewn over foam, is no border.
/// </summary>
internal static class BorderFinder
{
    // House: so much of the rim a border hides, and so much of it each of its parts.
    private const double HidesOfRim = 0.5;
    private const double PartHidesOfRim = 0.02;

    // House: so much of the fill it leaves open.
    private const double LeavesOpen = 0.2;

    // House: wider columns are areas of their own; what is covered by half later is not seen.
    private const double WidestMm = 8;
    private const double HiddenFrom = 0.5;

    // Cells that a column may miss the rim by: 0.5 mm. Boxes of what meets lie no farther apart, tape units.
    private const int ColumnMiss = 2;
    private const int Room = 10;

    // Many times what a real design has.
    private const int MostMeetings = 50_000;

    /// <summary>In the order of the fills; none when there is too much to compare.</summary>
    internal static IReadOnlyList<Border> Find(Subject subject)
    {
        var narrow = subject.Reading.Pieces.Where(piece => IsNarrow(piece, subject)).Select(piece => new Part(piece)).ToArray();
        var fills = subject.Reading.Pieces
            .Where(piece => piece is { Sure: true, Class: StitchClass.Fill or StitchClass.DenseRunning, Blanket.Area: > 0 } && !subject.Foam.Contains(piece))
            .Select(fill => (Fill: fill, Parts: narrow.Where(part => CanBorder(part.Piece, fill)).ToArray()))
            .ToArray();
        return fills.Sum(fill => (long)fill.Parts.Length) > MostMeetings
            ? []
            : [.. fills.SelectMany(fill => BordersOf(fill.Fill, fill.Parts, subject.Reading))];
    }

    private static bool IsNarrow(Piece piece, Subject subject) =>
        piece.Cover.Area > 0
        && (piece.Class is StitchClass.Running or StitchClass.Retraced or StitchClass.OpenZigzag or StitchClass.Pattern
            || (piece.Class == StitchClass.Satin && piece.WidthMm <= WidestMm))
        && !subject.Foam.Contains(piece)
        && subject.Ground[piece].UnderCover < HiddenFrom;

    private static bool CanBorder(Piece part, Piece fill) => part.First > fill.Last && Meet(part.Box, fill.Box);

    private static bool Meet(Box one, Box other) =>
        one.Left <= other.Right + Room && other.Left <= one.Right + Room
        && one.Bottom <= other.Top + Room && other.Bottom <= one.Top + Room;

    private static IEnumerable<Border> BordersOf(Piece fill, Part[] parts, DesignReading reading)
    {
        if (parts.Length == 0)
            yield break;
        var area = Rim.Closed(fill.Blanket);
        var rim = new Rim(area);
        foreach (var thread in parts.GroupBy(part => ThreadOf(part.Piece, reading)).OrderBy(thread => thread.Key))
        {
            Part[] over = [.. thread.Where(part => rim.HiddenBy([part.Reach]) >= PartHidesOfRim * rim.Cells)];
            if (over.Length > 0
                && rim.HiddenBy([.. over.Select(part => part.Reach)]) >= HidesOfRim * rim.Cells
                && area.SharedWithAny(over.Select(part => part.Piece.Blanket)) <= (1 - LeavesOpen) * area.Area)
                yield return new(fill, [.. over.Select(part => part.Piece)], GroundOf(fill, over[0].Piece, reading));
        }
    }

    /// <summary>Narrow ends of a fill may be read as lines or ways: what its thread sews there counts whatever it is.</summary>
    private static Cover GroundOf(Piece fill, Piece border, DesignReading reading)
    {
        var areas = reading.Pieces.Where(piece => IsBefore(piece.First, piece.Element, piece.Box)).Select(piece => piece.Blanket);
        var threads = reading.Elements.Where(element => IsBefore(element.Last, element.Index, element.Box)).Select(element => element.Cover);
        return Cover.Of([Rim.Closed(Cover.Of(areas)), .. threads]);

        bool IsBefore(int point, int element, Box box) => point < border.First
            && reading.Elements[element].Thread == reading.Elements[fill.Element].Thread
            && Meet(box, fill.Box);
    }

    private static int ThreadOf(Piece piece, DesignReading reading) => reading.Elements[piece.Element].Thread;

    private sealed class Part(Piece piece)
    {
        private readonly Lazy<Cover> _reach = new(
            () => piece.RowsInOrder.Count > 0 ? Rim.Grown(piece.Blanket, ColumnMiss) : Rim.Beside(piece.Cover), LazyThreadSafetyMode.None);

        public Piece Piece => piece;

        public Cover Reach => _reach.Value;
    }
}
