using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Lettering;

/// <summary>What most letters of a line are made of.</summary>
public enum LetterMake
{
    /// <summary>Columns.</summary>
    Satin,

    /// <summary>Lines one stitch wide.</summary>
    Running,

    /// <summary>Areas wider than columns.</summary>
    Fill,
}

/// <summary>Letters of one thread on one base line.</summary>
public sealed record TextLine
{
    /// <summary>Place among the lines of the design, from the lowest up, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>Received color blocks share this number when the ticket gives them one thread.</summary>
    public required int Thread { get; init; }

    public required LetterMake Make { get; init; }

    public required BaseLine Base { get; init; }

    /// <summary>From the viewer's left to right; at least three.</summary>
    public required IReadOnlyList<Glyph> Glyphs { get; init; }

    /// <summary>Indices of its elements, sorted; an element that also holds other things is among them.</summary>
    public required IReadOnlyList<int> Elements { get; init; }

    /// <summary>Box of all its letters on the cap, tape units.</summary>
    public required Box Box { get; init; }

    /// <summary>Height of the smallest letters as the customer sees them: the x-height where there is lower case, else that of the capitals, mm.</summary>
    public required double LetterHeightMm { get; init; }

    /// <summary>Height of the capitals, mm; null when only one height was found and lower case cannot be told.</summary>
    public double? CapHeightMm { get; init; }

    /// <summary>Height of lower case without ascenders, mm; null when there is one height only.</summary>
    public double? XHeightMm { get; init; }

    /// <summary>Median width of the strokes, mm; 0 for running stitches.</summary>
    public required double StrokeWidthMm { get; init; }

    /// <summary>Its letters are joined as in handwriting.</summary>
    public required bool IsConnected { get; init; }

    /// <summary>The lowest small wide line of the design.</summary>
    public required bool IsTagline { get; init; }

    /// <summary>Found without doubt; a line that is not sure may warn and never hold.</summary>
    public required bool Sure { get; init; }
}
