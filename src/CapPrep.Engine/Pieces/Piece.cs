using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>A part of a strand with one character: an area or a visible line, with its sizes.</summary>
public sealed record Piece
{
    /// <summary>Place in the received order, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The element it lies in.</summary>
    public required int Element { get; init; }

    /// <summary>First penetration of its own stitches, underlay not counted.</summary>
    public required int First { get; init; }

    /// <summary>Last one, included.</summary>
    public required int Last { get; init; }

    /// <summary>Received color block, from 1.</summary>
    public required int Block { get; init; }

    public required StitchClass Class { get; init; }

    /// <summary>Box of its own stitches, tape units as stored.</summary>
    public required Box Box { get; init; }

    /// <summary>Rows: strokes from edge to edge, half a zigzag each; 0 for lines and patterns.</summary>
    public required int Rows { get; init; }

    /// <summary>Median length of a row, mm: the width of a column, in curves without the rows that stop short; 0 without rows.</summary>
    public required double WidthMm { get; init; }

    /// <summary>
    /// From one needle point to the next on the same side, mm: two rows, 0.40 mm at what the trade calls normal density
    /// (common practice, no source); 0 without rows.
    /// </summary>
    public required double PitchMm { get; init; }

    /// <summary>Thread length on the covered area, mm per mm2; 5.0 for satin at a pitch of 0.40 mm.</summary>
    public required double ThreadPerAreaMm { get; init; }

    /// <summary>Direction of the rows; <see cref="Axis.None"/> for a line.</summary>
    public required Axis Axis { get; init; }

    /// <summary>Its class does not hang on a narrow choice; nothing that is not sure may hold a job.</summary>
    public required bool Sure { get; init; }

    /// <summary>Cells its own stitches run over.</summary>
    internal Cover Cover { get; init; } = Cover.None;

    /// <summary>
    /// Cells it hides: the cover, for closed stitches all cloth between their rows or lines, for a pattern the places
    /// where no cloth shows.
    /// </summary>
    internal Cover Blanket { get; init; } = Cover.None;

    /// <summary>Its rows in sewing order, each from the penetration it starts at to the one it ends with; empty for lines and patterns.</summary>
    internal IReadOnlyList<Interval> RowsInOrder { get; init; } = [];

    /// <summary>Satin, fill or ring lines: nothing shows through.</summary>
    internal bool IsClosed => Class is StitchClass.Satin or StitchClass.Fill or StitchClass.DenseRunning;
}
