using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Seating;

/// <summary>Where the design lies on the cap, by its needle points and not by the tape's origin.</summary>
public sealed record SeatedDesign
{
    private readonly Box? _centeredBox;

    public required Zone Zone { get; init; }

    /// <summary>What came to the base, and what came onto the seam.</summary>
    public required SeatingBase By { get; init; }

    public required SeatingCenter CenterBy { get; init; }

    /// <summary>Add to a tape position to get cap-front tape units. A turned tape is turned back first.</summary>
    public required TapePoint Offset { get; init; }

    /// <summary>The received tape was already turned by 180 degrees for the frame.</summary>
    public required bool TapeIsTurned { get; init; }

    /// <summary>Box of all needle points on the cap, tape units.</summary>
    public required Box Box { get; init; }

    /// <summary>The same without a small sign that stands alone at one end: what is centered.</summary>
    public Box CenteredBox
    {
        get => _centeredBox ?? Box;
        init => _centeredBox = value;
    }

    /// <summary>Where the tape's start point comes to lie on the cap, tape units.</summary>
    public required TapePoint Origin { get; init; }

    /// <summary>
    /// What the operator keys in to go from the center mark, at the height of the design's base, to the start point
    /// of the tape to sew; tape units, viewer's right and up the crown positive. Without a tape to sew: of the
    /// received one.
    /// </summary>
    public TapePoint KeyIn { get; init; }

    /// <summary>Room to the edges of the zone, along the cloth.</summary>
    public required Clearances ClearancesMm { get; init; }

    /// <summary>
    /// Largest factor, about the middle of its base, at which the design stays below the warn limits of height and
    /// top line: 1 when it already does, else to 0.01 downward, 0 when no size does.
    /// </summary>
    public required double LargestScale { get; init; }

    /// <summary>A tape position as it lies on the cap, tape units.</summary>
    public TapePoint OnCap(TapePoint onTape) =>
        (TapeIsTurned ? new TapePoint(-onTape.X, -onTape.Y) : onTape) + Offset;

    /// <summary>The tape position that lies at a place on the cap, tape units.</summary>
    public TapePoint OnTape(TapePoint onCap) =>
        TapeIsTurned ? (onCap - Offset).Turned() : onCap - Offset;
}

/// <summary>Room left, mm; negative where the design passes the edge.</summary>
/// <param name="Brim">Base to brim seam.</param>
/// <param name="Top">Top edge to the hold line of the top line.</param>
/// <param name="Left">Box to the zone's left edge at its height.</param>
/// <param name="Right">Box to the zone's right edge at its height.</param>
public sealed record Clearances(double Brim, double Top, double Left, double Right);
