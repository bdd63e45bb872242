using CapPrep.Engine.Trade;

namespace CapPrep.Drawing.Sheets;

/// <summary>
/// A drawing before it is a file: a page and a flat list of marks in whole 0.01 mm. Sheets are stored and compared
/// as bytes (<see cref="SheetFile"/>); the back ends turn the same sheet into PDF, PNG and SVG.
/// </summary>
public sealed record Sheet
{
    /// <summary>0.01 mm.</summary>
    public required int Width { get; init; }

    /// <summary>0.01 mm.</summary>
    public required int Height { get; init; }

    public required string Title { get; init; }

    /// <summary>What the sheet shows, for readers who cannot see it.</summary>
    public required string Description { get; init; }

    /// <summary>Language of its texts, e.g. <c>en</c>.</summary>
    public required string Language { get; init; }

    /// <summary>Date written into files, UTC, to the millisecond: the job's, never the clock's.</summary>
    public required DateTimeOffset Created { get; init; }

    public required IReadOnlyList<Mark> Marks { get; init; }
}

/// <summary>Sizes of paper, upright, in 0.01 mm (ISO 216; ANSI/ASME Y14.1 for letter, 8.5 x 11 in).</summary>
internal static class PaperSizes
{
    public static (int Width, int Height) Upright(Paper paper) =>
        paper == Paper.Letter ? (21590, 27940) : (21000, 29700);
}
