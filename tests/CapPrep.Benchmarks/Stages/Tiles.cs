using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;

namespace CapPrep.Benchmarks.Stages;

/// <summary>
/// Tapes of many stitches: designs by chance side by side on what the widest machine reaches, so that elements grow with
/// stitches and overlap as little as in the single designs.
/// </summary>
internal static class Tiles
{
    private const int Across = 960;
    private const int Up = 430;
    private const int PerRow = 4;
    private const int Most = 36;

    /// <summary>As many designs as it takes for so many penetrations, or all that find room.</summary>
    internal static byte[] Of(int penetrations)
    {
        var tiles = 1;
        while (tiles < Most && Moves(tiles, tiles).Count(move => move.Kind == RecordKind.Stitch) < penetrations)
            tiles++;
        return TapeWriter.Write(new("TILES", Moves(tiles, tiles)));
    }

    /// <summary>Four designs, so many times.</summary>
    internal static byte[] Copies(int copies) => TapeWriter.Write(new("TILES", Moves(PerRow * copies, PerRow)));

    private static List<TapeMove> Moves(int tiles, int distinct)
    {
        var moves = new List<TapeMove>();
        for (var tile = 0; tile < tiles; tile++)
        {
            var tape = RandomDesign.Of(tile % distinct).Draft.ToTape("TILE");
            var offset = new TapePoint(tile % PerRow * Across, tile / PerRow * Up);
            if (moves.Count > 0)
                moves.Add(new(RecordKind.ColorStop, moves[^1].To));
            for (var record = 0; record < tape.RecordCount; record++)
                moves.Add(new(tape.Kinds[record], tape.PositionBehind(record) + offset));
        }

        return moves;
    }
}
