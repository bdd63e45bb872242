using CapPrep.Engine.Checks;

namespace CapPrep.Engine.Trade;

/// <summary>One row of the fact table that limits and catalog figures rest on.</summary>
/// <param name="Row">Row id, e.g. <c>F03</c>.</param>
/// <param name="Says">The fact, with its unit.</param>
/// <param name="Grade">
/// <c>A</c> standard, handbook or patent; <c>B</c> trade magazine; <c>C</c> maker; <c>D</c> shop or forum;
/// <c>X</c> arithmetic from other rows; <c>M</c> from memory.
/// </param>
public sealed record FactRow(string Row, string Says, string Grade)
{
    /// <summary>Null for rows that are no published source.</summary>
    public string? Title { get; init; }

    public string? Publisher { get; init; }

    /// <summary>Null when the page bears no year.</summary>
    public int? Year { get; init; }

    public string? Url { get; init; }

    /// <summary>True for grades A and B.</summary>
    public bool IsPublished => Grade is "A" or "B";
}

/// <summary>The rows of the fact table that this engine knows.</summary>
public sealed class PublishedSources(IReadOnlyList<FactRow> rows)
{
    /// <summary>In the order of their ids.</summary>
    public IReadOnlyList<FactRow> Rows { get; } = rows;

    public FactRow? Find(string row) => Rows.FirstOrDefault(known => known.Row == row);

    /// <summary>The first of these rows that stands in a published source of grade A or B, or null.</summary>
    public PublishedSource? FirstPublished(IEnumerable<string> rows) =>
        rows.Select(Find).OfType<FactRow>().FirstOrDefault(row => row.IsPublished) is { Title: { } title, Publisher: { } publisher } found
            ? new PublishedSource(found.Row, title, publisher, found.Year)
            : null;
}
