using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Draws parts of a stitch sequence.</summary>
internal static class Painting
{
    // A float shorter than 1 mm lies like a stitch; its square in tape units.
    private const int ShortFloatSquare = 100;

    // A cell, in sixteenths of a tape unit.
    private const int Cell = Fine.PerMillimeter / Cover.CellsPerMillimeter;

    /// <summary>Between two penetrations lie moves with the needle up over more than 1 mm in all.</summary>
    public static bool IsFloat(this StitchSequence stitches, int index) =>
        stitches.Jumps[index] > 0 && Fine.Square(stitches.At(index) - stitches.At(index - 1)) > ShortFloatSquare;

    public static Box BoxOf(this StitchSequence stitches, Interval interval)
    {
        var box = Box.Of(stitches.At(interval.First));
        for (var i = interval.First + 1; i <= interval.Last; i++)
            box = box.Union(stitches.At(i));
        return box;
    }

    /// <summary>Length along the stitches, sixteenths of a tape unit.</summary>
    public static long LengthOf(this StitchSequence stitches, Interval interval)
    {
        var length = 0L;
        for (var i = interval.First + 1; i <= interval.Last; i++)
            length += Fine.Length(stitches.At(i) - stitches.At(i - 1));
        return length;
    }

    /// <summary>Cells under the thread from one penetration to another through all between, floats and all.</summary>
    public static Cover ThreadOf(this StitchSequence stitches, Interval interval)
    {
        var painter = new CoverPainter(stitches.Grid, stitches.BoxOf(interval));
        painter.Dot(stitches.At(interval.First));
        for (var i = interval.First + 1; i <= interval.Last; i++)
            painter.Line(stitches.At(i - 1), stitches.At(i));
        return painter.Cover;
    }

    /// <summary>Paints the cells a section runs over and those it hides.</summary>
    public static void Paint(this Section section, StitchSequence stitches)
    {
        var painter = new CoverPainter(stitches.Grid, section.Box);
        painter.Section(stitches, section);
        section.Cover = painter.Cover;
        section.Blanket = section switch
        {
            { IsClosed: true, Chain: { } chain } => BlanketOf(stitches.Grid, chain),
            { Class: StitchClass.DenseRunning } => section.Cover.Filled(),
            { Class: StitchClass.Pattern } => section.Cover.Filled().Solid(),
            _ => section.Cover,
        };
    }

    /// <summary>Cells under the stitches of sections and between them, floats left out.</summary>
    public static Cover CoverOf(this StitchSequence stitches, IReadOnlyList<Section> sections, Box box)
    {
        var painter = new CoverPainter(stitches.Grid, box);
        foreach (var section in sections)
            painter.Section(stitches, section);
        foreach (var section in sections.Skip(1))
            painter.Stitch(stitches, section.Interval.First);
        return painter.Cover;
    }

    /// <summary>Penetrations at the ends of floats in sections and between them.</summary>
    public static IEnumerable<int> Floats(this StitchSequence stitches, IReadOnlyList<Section> sections) =>
        sections
            .SelectMany((section, i) => Enumerable.Range(section.Interval.First, section.IsClosed ? 1 : section.Interval.Count)
                .Skip(i == 0 ? 1 : 0))
            .Where(stitches.IsFloat);

    private static Cover BlanketOf(CellGrid grid, Chain chain)
    {
        var rows = chain.Rows;
        var painter = new CoverPainter(grid, rows.Select(row => Box.Of(row.From).Union(row.To)).Aggregate((sum, box) => sum.Union(box)));
        for (var k = 1; k < rows.Count; k++)
            painter.Between(rows[k - 1], rows[k]);
        return painter.Cover;
    }

    /// <summary>Two rows and so many lines between them that no cell is left out.</summary>
    private static void Between(this CoverPainter painter, in Stroke row, in Stroke next)
    {
        TapePoint outward = next.To - row.From, inward = next.From - row.To;
        var steps = 1 + (int)(Math.Max(Fine.Length(outward), Fine.Length(inward)) / Cell);
        for (var k = 0; k <= steps; k++)
            painter.Line(row.From + Share(outward, k, steps), row.To + Share(inward, k, steps));
    }

    private static TapePoint Share(TapePoint way, int part, int parts) => new(way.X * part / parts, way.Y * part / parts);

    private static void Section(this CoverPainter painter, StitchSequence stitches, Section section)
    {
        painter.Dot(stitches.At(section.Interval.First));
        for (var i = section.Interval.First + 1; i <= section.Interval.Last; i++)
        {
            // Rows too long for one record are sewn with jump records, and are rows all the same.
            if (section.IsClosed)
                painter.Line(stitches.At(i - 1), stitches.At(i));
            else
                painter.Stitch(stitches, i);
        }
    }

    private static void Stitch(this CoverPainter painter, StitchSequence stitches, int index)
    {
        if (stitches.IsFloat(index))
            painter.Dot(stitches.At(index));
        else
            painter.Line(stitches.At(index - 1), stitches.At(index));
    }
}
