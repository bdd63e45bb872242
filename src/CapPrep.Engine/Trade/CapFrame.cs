using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade;

/// <summary>How a frame holds the cap, which decides what order rules mean.</summary>
public enum FrameHold
{
    /// <summary>Strap along the brim seam, posts and clips at the sides; the crown is free.</summary>
    StrapAndPosts,

    /// <summary>Clamped flat all round, for sides, backs and visors.</summary>
    FlatClamp,
}

/// <summary>What holds the cap while it is sewn. Lengths in cap-front millimeters.</summary>
public sealed record CapFrame
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Where the needle may go, x from the center, y from the brim seam.</summary>
    public required BoxMm FieldMm { get; init; }

    public required double ArcDegrees { get; init; }

    public required FrameHold Holds { get; init; }

    /// <summary>Upper edge of the strap over the brim seam; 0 without a strap.</summary>
    public required double StrapTopMm { get; init; }

    /// <summary>x of the posts, either sign listed; empty without posts.</summary>
    public IReadOnlyList<double> PostsXMm { get; init; } = [];

    /// <summary>The clips hold the sides below this height; null without clips.</summary>
    public double? SidesHeldBelowMm { get; init; }

    public required int SetsOwned { get; init; }

    /// <summary>Frame numbers painted on the frames; frame n belongs to head n.</summary>
    public IReadOnlyList<string> Numbers { get; init; } = [];

    /// <summary>The gauge this frame is loaded on, in words.</summary>
    public string? Gauge { get; init; }

    /// <summary>Ids of styles it is for; empty: all.</summary>
    public IReadOnlyList<string> ForStyles { get; init; } = [];

    public required IReadOnlyList<CapLocation> Locations { get; init; }

    public required IReadOnlyDictionary<string, string> Sources { get; init; }
}
