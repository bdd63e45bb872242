using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade;

public enum CrownStructure
{
    Structured,
    Unstructured,
    Foam,
}

/// <summary>A blank cap: panels, seams, zones and how it is sewn. Lengths in cap-front millimeters.</summary>
public sealed record CapStyle
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Panels of the crown; 0 for a visor band.</summary>
    public required int Panels { get; init; }

    public required CrownStructure Structure { get; init; }

    /// <summary>Brim seam to button along the front, mm; never derived from words like "high profile".</summary>
    public required double CrownHeightMm { get; init; }

    public required double CircumferenceMm { get; init; }

    /// <summary>Null: one-piece front, no seam rule applies.</summary>
    public CenterSeam? CenterSeam { get; init; }

    public IReadOnlyList<CapSeam> Seams { get; init; } = [];

    public IReadOnlyList<Eyelet> Eyelets { get; init; } = [];

    public required Brim Brim { get; init; }

    public required FrontView FrontView { get; init; }

    /// <summary>At least one; at most one per location.</summary>
    public required IReadOnlyList<Zone> Zones { get; init; }

    public required SewingAdvice Sewing { get; init; }

    public required FramingAdvice Framing { get; init; }

    /// <summary>What stiffens the front, in words.</summary>
    public string? Stiffener { get; init; }

    /// <summary>Styles of one group may share a load.</summary>
    public string? MayBeWorkedWith { get; init; }

    public IReadOnlyList<Technique> Techniques { get; init; } = [Technique.Flat];

    /// <summary>Tallest foam work this style takes, mm; null: the zone's own height.</summary>
    public double? FoamHeightMm { get; init; }

    public IReadOnlyList<string> Skus { get; init; } = [];

    public IReadOnlyList<NamedColor> CapColors { get; init; } = [];

    public string? SizeRange { get; init; }

    /// <summary>The supplier's own crown height, shown only, mm.</summary>
    public double? SupplierCrownMm { get; init; }

    /// <summary><c>strap</c>, <c>snap</c>, <c>closed</c> or <c>stretch</c>.</summary>
    public string? Closure { get; init; }

    public bool HeatSensitive { get; init; }

    /// <summary>Null: nobody in this shop has measured the blank yet.</summary>
    public MeasuredBy? Measured { get; init; }

    /// <summary>Ids of framing steps, in order.</summary>
    public IReadOnlyList<string> FramingSteps { get; init; } = [];

    public SheetStiffness? Shift { get; init; }

    /// <summary>JSON pointer to source; every number of the body is covered by one.</summary>
    public required IReadOnlyDictionary<string, string> Sources { get; init; }

    /// <summary>The zone of a location, or null where this style has none.</summary>
    public Zone? ZoneOf(CapLocation location) => Zones.FirstOrDefault(zone => zone.Location == location);
}

/// <param name="HalfReachMm">Half width of the strip that the seam rules look at.</param>
/// <param name="StepMm">Where the thickness step lies, either side; 0 where there is none.</param>
/// <param name="GrooveMm">Half width of the visible groove.</param>
/// <param name="Layers">Layers under the needle (fact row A13).</param>
public sealed record CenterSeam(double HalfReachMm, double StepMm, double GrooveMm, int Layers);

/// <param name="Kind"><c>center</c>, <c>side</c> or <c>top</c>.</param>
/// <param name="LineMm">The seam as a polyline, bottom first; at least two points.</param>
public sealed record CapSeam(string Kind, IReadOnlyList<PointMm> LineMm);

public sealed record Eyelet(double XMm, double YMm, double RadiusMm);

/// <param name="Shape"><c>curved</c>, <c>flat</c> or <c>stiff</c>.</param>
/// <param name="BowMm">How far the brim seam lies below its middle at x = 50, cap off the frame.</param>
public sealed record Brim(string Shape, double BowMm, double DepthMm, double WidthMm);

/// <param name="RadiusMm">Radius of the crown at the brim (fact row A18).</param>
public sealed record FrontView(double RadiusMm, double CrownSlopeDeg);

/// <summary>The area of one location that may be sewn on, in its own frame of reference.</summary>
public sealed record Zone
{
    public required CapLocation Location { get; init; }

    /// <summary>Where x = 0 and y = 0 of this zone lie, in words.</summary>
    public required string Origin { get; init; }

    /// <summary>
    /// x of this zone's origin on the cap front; null: the zone does not lie on the front, so the front's seams and
    /// eyelets do not concern it and frame and machine are centered on the zone.
    /// </summary>
    public double? OriginXMm { get; init; }

    /// <summary>Simple polygon, 3 to 200 points, not repeated at the end.</summary>
    public required IReadOnlyList<PointMm> OutlineMm { get; init; }

    public required TwoLimits Height { get; init; }

    public required TwoLimits Width { get; init; }

    /// <summary>Highest top edge by |x|, linear between the points, constant past the last; empty: no top line.</summary>
    public IReadOnlyList<TopLinePoint> TopLine { get; init; } = [];

    public required BrimClearance BrimClearance { get; init; }

    /// <summary>Distance kept from the edge of the field (fact row F18), mm.</summary>
    public required double BorderMm { get; init; }

    /// <summary>Radius of the closure's opening below a back zone; null elsewhere.</summary>
    public double? ArchRadiusMm { get; init; }

    /// <summary>The top line at one place, or null where the zone has none.</summary>
    public TopLinePoint? TopLineAt(double xMm)
    {
        if (TopLine.Count == 0)
            return null;
        var x = Math.Abs(xMm);
        var next = TopLine.FirstOrDefault(point => point.XMm >= x) ?? TopLine[^1];
        var last = TopLine.LastOrDefault(point => point.XMm <= x) ?? TopLine[0];
        var share = next.XMm > last.XMm ? (x - last.XMm) / (next.XMm - last.XMm) : 0;
        return new(x, last.WarnMm + share * (next.WarnMm - last.WarnMm), last.HoldMm + share * (next.HoldMm - last.HoldMm));
    }
}

/// <summary>A value above <paramref name="WarnAboveMm"/> warns, above <paramref name="HoldAboveMm"/> holds.</summary>
public sealed record TwoLimits(double WarnAboveMm, double HoldAboveMm);

public sealed record TopLinePoint(double XMm, double WarnMm, double HoldMm);

/// <param name="NominalMm">Where a design's base is put unless the ticket says otherwise.</param>
/// <param name="WarnBelowMm">The floor (fact row F23).</param>
public sealed record BrimClearance(double NominalMm, double WarnBelowMm);

/// <summary>How a style is sewn; speeds in stitches per minute, a null speed means "not on this style".</summary>
public sealed record SewingAdvice
{
    public required int SpeedSpm { get; init; }

    public int? SeamSpeedSpm { get; init; }

    public int? FoamSpeedSpm { get; init; }

    public int? MetallicSpeedSpm { get; init; }

    public required string Needle { get; init; }

    public required string Backing { get; init; }

    public int BackingPieces { get; init; } = 1;

    public double? BackingWidthMm { get; init; }

    public double? BackingHeightMm { get; init; }

    public required bool Soften { get; init; }

    /// <summary>How it is softened, or why not, in words.</summary>
    public string? Softening { get; init; }
}

/// <param name="SecondsPerCap">Trained person.</param>
/// <param name="ScatterMm">Standard deviation of the center before the station's own, mm.</param>
/// <param name="CenterFoundBy">In words.</param>
public sealed record FramingAdvice(double SecondsPerCap, double ScatterMm, string CenterFoundBy);

public sealed record MeasuredBy(string By, DateOnly Date);

/// <summary>Parameters of the sheet model; strains are shares, stiffness in N/mm.</summary>
public sealed record SheetStiffness(
    double E1Fill,
    double E1Satin,
    double E2OverE1,
    double E1NPerMm,
    double E2NPerMm,
    double G12NPerMm,
    double Nu12,
    double SlackShare);
