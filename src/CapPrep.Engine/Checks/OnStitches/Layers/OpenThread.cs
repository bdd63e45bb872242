using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches.Layers;

/// <summary>Thread of lines and nets that lies under areas, whatever it was meant for.</summary>
internal sealed class OpenThread
{
    private readonly (int First, Cover Thread)[] _lines;

    internal OpenThread(DesignReading reading, StitchSequence stitches) => _lines =
    [
        .. reading.Spans
            .Where(span => span.Role != SpanRole.Tie && span.Class is not (StitchClass.Satin or StitchClass.Fill))
            .Select(span => (span.First, stitches.ThreadOf(new(Math.Max(0, span.First - 1), Math.Min(stitches.Count - 1, span.Last + 1))))),
    ];

    /// <summary>How much of it lies under a piece and was sewn before it, mm.</summary>
    internal double UnderMm(Piece piece) =>
        (double)piece.Blanket.SharedWithAny(_lines.Where(line => line.First < piece.First).Select(line => line.Thread)) / Cover.CellsPerMillimeter;
}
