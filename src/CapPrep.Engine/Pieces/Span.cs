namespace CapPrep.Engine.Pieces;

/// <summary>How stitches are laid, seen from these stitches alone.</summary>
public enum StitchClass
{
    /// <summary>One stitch after the other along a line.</summary>
    Running,

    /// <summary>Stitches from edge to edge, closed.</summary>
    Satin,

    /// <summary>Rows of several stitches, closed.</summary>
    Fill,

    /// <summary>Single stitches from edge to edge with cloth showing between them.</summary>
    OpenZigzag,

    /// <summary>Rows of several stitches with cloth showing between them.</summary>
    OpenFill,

    /// <summary>Back and forth on one line.</summary>
    Retraced,

    /// <summary>Ring lines: rows that follow the edge, or a spiral, so near to each other that they are closed.</summary>
    DenseRunning,

    /// <summary>The same few stitches over and over along a way: rows of diamonds, overlocked edges.</summary>
    Pattern,
}

/// <summary>What stitches are there for, seen from what is sewn over and under them.</summary>
public enum SpanRole
{
    /// <summary>Seen in the finished design, or meant to be.</summary>
    Visible,

    /// <summary>Carries what is sewn over it.</summary>
    Underlay,

    /// <summary>Leads the thread from place to place under what is sewn later.</summary>
    HiddenTravel,

    /// <summary>Leads the thread from place to place over what is sewn already.</summary>
    TravelOnTop,

    /// <summary>Holds the end of the thread.</summary>
    Tie,
}

/// <summary>Consecutive penetrations of one strand with one class and one role; each penetration lies in one span.</summary>
/// <param name="First">First penetration, as index in the stitch sequence.</param>
/// <param name="Last">Last penetration, included.</param>
/// <param name="Piece">Piece it is a part of or belongs to, or null.</param>
/// <param name="Element">Element it lies in, or null when it is a link.</param>
public sealed record Span(int First, int Last, StitchClass Class, SpanRole Role, int? Piece, int? Element)
{
    public int Penetrations => Last - First + 1;
}
