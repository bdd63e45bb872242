using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Verdicts;

/// <summary>A piece that could be something else.</summary>
/// <param name="Element">Number of its element, from 1.</param>
/// <param name="ReadAs">What it was taken for.</param>
/// <param name="BoxMm">On the cap; null for a design that lies on no cap.</param>
/// <param name="Stitches">Penetrations of the received tape, from 1.</param>
public sealed record DoubtfulPiece(int Element, StitchClass ReadAs, BoxMm? BoxMm, StitchRange Stitches);

/// <summary>Says where the reading is in doubt.</summary>
internal static class DoubtfulPieces
{
    private const int Most = 20;

    /// <summary>The largest, at most 20, in received order.</summary>
    internal static IReadOnlyList<DoubtfulPiece> Of(Subject job) =>
        [.. job.Reading.Pieces
            .Where(piece => !piece.Sure)
            .OrderByDescending(piece => piece.Last - piece.First)
            .Take(Most)
            .OrderBy(piece => piece.First)
            .Select(piece => new DoubtfulPiece(
                piece.Element + 1,
                piece.Class,
                job.IsSeated ? job.Points.BoxOf(piece.First, piece.Last).ToMillimeters() : null,
                new StitchRange(piece.First + 1, piece.Last + 1)))];
}
