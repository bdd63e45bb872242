using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Tests;

/// <summary>Tapes of chosen needle points; sizes and places in tape units from the start point.</summary>
internal static class Stitched
{
    /// <summary>The last stitch ends beside the first one, because a hole met twice is worth a note.</summary>
    private const int Open = 10;

    private const int LongestStitch = 50;

    /// <summary>An upright design whose bottom center is the start point, sewn round its outline but for the last 1 mm.</summary>
    internal static Tape Seated(int width, int height) => Box(-width / 2, 0, width - (width / 2), height);

    internal static Tape Box(int left, int bottom, int right, int top) =>
        Along(new(left, bottom), new(right, bottom), new(right, top), new(left, top), new(left, bottom + Open));

    /// <summary>Stitches from corner to corner, none longer than 5 mm; the writer leads the needle to the first one by jumps.</summary>
    internal static Tape Along(params TapePoint[] corners)
    {
        var moves = new List<TapeMove> { new(RecordKind.Stitch, corners[0]) };
        foreach (var (from, to) in corners.Zip(corners.Skip(1)))
            moves.AddRange(Between(from, to).Select(point => new TapeMove(RecordKind.Stitch, point)));
        return Of(moves);
    }

    /// <summary>The same box sewn once in each of so many colors.</summary>
    internal static Tape Colors(int count)
    {
        var once = Between(new(0, 0), new(400, 0)).Concat(Between(new(400, 0), new(0, 300))).Concat(Between(new(0, 300), new(0, 0)));
        var moves = Enumerable.Range(0, count).SelectMany(color => once
            .Select(point => new TapeMove(RecordKind.Stitch, point))
            .Prepend(new TapeMove(color == 0 ? RecordKind.Stitch : RecordKind.ColorStop, new(0, 0))));
        return Of(moves);
    }

    /// <summary>Written by the writer and read back, so that the header is right.</summary>
    internal static Tape Of(IEnumerable<TapeMove> moves) => Read(TapeWriter.Write(new TapeToWrite("TEST", [.. moves])));

    internal static Tape Read(byte[] bytes) => TapeReader.Read(bytes, TapeReading.Standard) is { Succeeded: true, Value: var tape }
        ? tape!
        : throw new InvalidOperationException("The test's tape cannot be read.");

    internal static IEnumerable<TapeMove> Jumps(TapePoint from, TapePoint to) =>
        Between(from, to).Select(point => new TapeMove(RecordKind.Jump, point));

    private static IEnumerable<TapePoint> Between(TapePoint from, TapePoint to)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var steps = (Math.Max(Math.Abs(dx), Math.Abs(dy)) + LongestStitch - 1) / LongestStitch;
        return Enumerable.Range(1, steps).Select(k => new TapePoint(from.X + (dx * k / steps), from.Y + (dy * k / steps)));
    }
}
