using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>What most of an element's visible thread is.</summary>
public enum ElementKind
{
    Satin,
    Fill,
    Running,
    OpenZigzag,
    Retraced,

    /// <summary>Ring lines.</summary>
    DenseRunning,

    /// <summary>A repeat pattern.</summary>
    Pattern,

    /// <summary>Lies under cover that other elements sew later.</summary>
    Underlay,
}

/// <summary>
/// The smallest thing that moves in the sew order: penetrations of one strand that are sewn whole, in their own
/// direction, with everything between them unchanged.
/// </summary>
public sealed record Element
{
    /// <summary>Place in the received order, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>First penetration, as index in the stitch sequence.</summary>
    public required int First { get; init; }

    /// <summary>Last penetration, included.</summary>
    public required int Last { get; init; }

    /// <summary>Received color block, from 1.</summary>
    public required int Block { get; init; }

    /// <summary>Blocks that the ticket gives one thread share this number; without threads every block has its own.</summary>
    public required int Thread { get; init; }

    public required ElementKind Kind { get; init; }

    /// <summary>Box of its penetrations, tape units as stored.</summary>
    public required Box Box { get; init; }

    /// <summary>Cells its threads run over, underlay included; floats of over 1 mm left out.</summary>
    public required Cover Cover { get; init; }

    /// <summary>Main direction of its stitches.</summary>
    public required Axis Axis { get; init; }

    public int Penetrations => Last - First + 1;
}

/// <summary>
/// The thread between two elements that follow each other in one strand. It is kept when they still do, else cut and
/// its penetrations dropped.
/// </summary>
/// <param name="Before">Index of the element before it.</param>
/// <param name="After">Index of the element behind it.</param>
/// <param name="First">First penetration of its own.</param>
/// <param name="Last">Last one; <paramref name="First"/> - 1 when it is a single stitch from element to element.</param>
/// <param name="MayBeDropped">True on every link of a finished reading: what may not be dropped is no link.</param>
public sealed record Link(int Before, int After, int First, int Last, bool MayBeDropped)
{
    public int Penetrations => Last - First + 1;
}

/// <summary>Why one element may only be sewn after another.</summary>
public enum MustFollowReason
{
    /// <summary>It lies over the other.</summary>
    Overlap,

    /// <summary>It lies over the other's underlay.</summary>
    Underlay,

    /// <summary>It hides a way that the thread of the other takes.</summary>
    HiddenTravel,

    /// <summary>It lies over a float of the other, or over a link that leads to the other.</summary>
    Travel,
}

/// <summary>Two elements whose order may not change. Only direct pairs are listed, not what follows from them.</summary>
/// <param name="Before">Index of the element sewn first.</param>
/// <param name="After">Index of the element sewn later.</param>
/// <param name="Reason">The strongest reason; a pair is listed once.</param>
/// <param name="OverlapMm2">Area the two share, mm2; for travel what is hidden of it.</param>
public readonly record struct MustFollow(int Before, int After, MustFollowReason Reason, double OverlapMm2);
