using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>
/// Finds the stops at which a person lays, places or cuts something: marked in the ticket, between blocks of one
/// thread, or between the parts of an applique: a closed line that shows the place, a line or zigzag along it that
/// holds the fabric, and a satin over both.
/// </summary>
public static class DeliberateStops
{
    // House, mm: how near the holding line follows the first one, how far apart the ends of a closed line may be.
    private const double Along = 1.5;
    private const double Closed = 2;
    private const double SmallestShape = 8;

    /// <summary>Received blocks, from 1, behind which such a stop lies; sorted.</summary>
    /// <param name="reading">The design.</param>
    /// <param name="stitches">Its penetrations.</param>
    /// <param name="threads">The ticket's threads; empty when it names none.</param>
    /// <param name="threadOfBlock">A number for the thread of each block; null when the ticket names none.</param>
    public static IReadOnlyList<int> Find(
        DesignReading reading, StitchSequence stitches, IReadOnlyList<TicketThread> threads, IReadOnlyList<int>? threadOfBlock)
    {
        var areas = Enumerable.Range(1, stitches.Blocks).Select(block => AreasOf(reading, block)).ToArray();
        return [.. Enumerable.Range(1, Math.Max(0, stitches.Blocks - 1)).Where(block =>
            threads.Any(thread => thread.Block == block + 1 && thread.Action is not (null or StopAction.None))
            || (threadOfBlock is not null && threadOfBlock[block - 1] == threadOfBlock[block])
            || IsAppliqueStop(areas, block, stitches))];
    }

    private static Piece[] AreasOf(DesignReading reading, int block) => [.. reading.Pieces.Where(piece => piece.Block == block)];

    private static bool IsAppliqueStop(Piece[][] areas, int block, StitchSequence stitches) =>
        IsHold(areas, block - 1, block, stitches) || (block >= 2 && IsHold(areas, block - 2, block - 1, stitches) && HasCover(areas, block, areas[block - 2][^1]));

    private static bool IsHold(Piece[][] areas, int place, int hold, StitchSequence stitches) =>
        areas[place].Length > 0 && areas[hold].Length > 0
        && areas[place][^1] is var line && IsClosedLine(line, stitches)
        && areas[hold][0] is { Class: StitchClass.Running or StitchClass.OpenZigzag } second && Follows(line, second, stitches)
        && (HasCover(areas, hold, line) || (hold + 1 < areas.Length && HasCover(areas, hold + 1, line)));

    private static bool IsClosedLine(Piece piece, StitchSequence stitches) =>
        piece.Class == StitchClass.Running
        && Math.Min(piece.Box.Width, piece.Box.Height) >= 10 * SmallestShape
        && (stitches.At(piece.First) - stitches.At(piece.Last)).Reach <= 10 * Closed;

    /// <summary>Every needle point of the second lies near a stitch of the first.</summary>
    private static bool Follows(Piece line, Piece second, StitchSequence stitches) =>
        Enumerable.Range(second.First, second.Last - second.First + 1).All(point =>
            Enumerable.Range(line.First, line.Last - line.First).Any(from => IsNear(stitches, point, from)));

    private static bool IsNear(StitchSequence stitches, int point, int from)
    {
        var (start, end, at) = (stitches.At(from), stitches.At(from + 1), stitches.At(point));
        double dx = end.X - start.X, dy = end.Y - start.Y;
        double px = at.X - start.X, py = at.Y - start.Y;
        var length = (dx * dx) + (dy * dy);
        var along = length == 0 ? 0 : Math.Clamp(((px * dx) + (py * dy)) / length, 0, 1);
        double ox = px - (along * dx), oy = py - (along * dy);
        return (ox * ox) + (oy * oy) <= 100 * Along * Along;
    }

    private static bool HasCover(Piece[][] areas, int block, Piece line) => areas[block].Any(piece =>
        piece.Class == StitchClass.Satin
        && piece.Box.Left <= line.Box.Left && piece.Box.Right >= line.Box.Right
        && piece.Box.Bottom <= line.Box.Bottom && piece.Box.Top >= line.Box.Top);
}
