using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Tapes;

/// <summary>What one record of a tape does.</summary>
public enum RecordKind : byte
{
    /// <summary>Move, then the needle penetrates.</summary>
    Stitch,

    /// <summary>Move with the needle up.</summary>
    Jump,

    /// <summary>The machine stops for a change of color or for the operator's hands.</summary>
    ColorStop,

    /// <summary>A record whose type bits are none of the four known ones; it moves like a jump.</summary>
    Unknown,
}

/// <summary>
/// A tape as read: every record up to the end record, with the absolute position behind it in tape units,
/// beginning at (0, 0). The end record and what follows it are not records of the tape.
/// </summary>
/// <param name="header">What the header says of the body, unchecked.</param>
/// <param name="kinds">One kind per record.</param>
/// <param name="x">Position behind each record, 0.1 mm, to the right.</param>
/// <param name="y">Position behind each record, 0.1 mm, upward.</param>
/// <param name="quirks">Everything odd about the container or the records, worst first never hidden.</param>
public sealed class Tape(
    TapeHeader header,
    RecordKind[] kinds,
    int[] x,
    int[] y,
    IReadOnlyList<TapeQuirk> quirks)
{
    /// <summary>Bytes before the first record (fact row T3).</summary>
    public const int HeaderBytes = 512;

    /// <summary>Bytes of one record (fact row T4).</summary>
    public const int RecordBytes = 3;

    /// <summary>Largest move of one record, per axis, in tape units (fact row T2).</summary>
    public const int MaxMove = 121;

    public TapeHeader Header { get; } = header;

    public int RecordCount => kinds.Length;

    public ReadOnlySpan<RecordKind> Kinds => kinds;

    public ReadOnlySpan<int> X => x;

    public ReadOnlySpan<int> Y => y;

    public IReadOnlyList<TapeQuirk> Quirks { get; } = quirks;

    /// <summary>How the file ends; what a check for cut-off tapes needs beside the announced number of records.</summary>
    public TapeEnding Ending { get; init; } = TapeEnding.Whole;

    /// <summary>Offset of a record's first byte from the start of the file.</summary>
    public static long ByteOffsetOf(int record) => HeaderBytes + ((long)RecordBytes * record);

    public TapePoint PositionBehind(int record) => new(x[record], y[record]);
}

/// <summary>How a tape's file ends.</summary>
/// <param name="HasEndRecord">An end record was found behind the last record.</param>
/// <param name="PartBytes">Bytes of a record that the file's end cuts off, 0 to 2; only without an end record.</param>
/// <param name="BytesAfterEnd">Bytes behind the end record, not counting one closing byte alone.</param>
public readonly record struct TapeEnding(bool HasEndRecord, int PartBytes, int BytesAfterEnd)
{
    public static readonly TapeEnding Whole = new(true, 0, 0);
}

/// <summary>
/// The announcements of a tape's header. A member is null when its field is missing or not a number.
/// Extents are lengths from the start point, in tape units, as the header states them.
/// </summary>
public sealed record TapeHeader
{
    public string Label { get; init; } = "";

    /// <summary>Announced number of records, jumps and stops included.</summary>
    public int? Records { get; init; }

    /// <summary>Announced number of color stops.</summary>
    public int? ColorStops { get; init; }

    public int? PlusX { get; init; }

    public int? MinusX { get; init; }

    public int? PlusY { get; init; }

    public int? MinusY { get; init; }

    /// <summary>Announced end point, relative to the start.</summary>
    public int? EndX { get; init; }

    public int? EndY { get; init; }
}

/// <summary>Something odd that the reader met and could live with.</summary>
/// <param name="Rule">The id of the rule that reports it, e.g. <c>tape.header-counts</c>.</param>
/// <param name="Count">How many times it occurs.</param>
/// <param name="Message">One sentence with the figures.</param>
public sealed record TapeQuirk(string Rule, int Count, string Message)
{
    /// <summary>First record concerned, counted from 0, where there is one.</summary>
    public int? Record { get; init; }

    /// <summary>First byte concerned, from the start of the file, where there is one.</summary>
    public long? ByteOffset { get; init; }

    /// <summary>Measured value, where the quirk is a difference of numbers; lengths in mm.</summary>
    public double? Measured { get; init; }

    /// <summary>What the header announced, where it did; lengths in mm.</summary>
    public double? Announced { get; init; }
}
