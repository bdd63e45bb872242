namespace CapPrep.Engine.Trade;

/// <summary>A gauge and the people who put caps on frames with it.</summary>
public sealed record FramingStation
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required int Persons { get; init; }

    public required double SecondsPerCap { get; init; }

    public required double SoftenSecondsPerCap { get; init; }

    /// <summary>How far its caps lie off where no group of styles is given its own.</summary>
    public required StationScatter Scatter { get; init; }

    /// <summary>Its own figures for groups of styles: a front without a seam is centered less surely.</summary>
    public IReadOnlyList<GroupScatter> ScatterByGroup { get; init; } = [];

    public required StationTolerance Tolerance { get; init; }

    /// <summary>Language of its cards; null: the shop's.</summary>
    public string? Language { get; init; }

    public required IReadOnlyDictionary<string, string> Sources { get; init; }

    /// <summary>Its scatter on one cap style, by the style's group.</summary>
    public StationScatter ScatterOn(CapStyle style) =>
        ScatterByGroup.FirstOrDefault(group => group.Group == style.MayBeWorkedWith)?.Scatter ?? Scatter;
}

/// <param name="Group">A style's <see cref="CapStyle.MayBeWorkedWith"/>.</param>
public sealed record GroupScatter(string Group, StationScatter Scatter);

/// <summary>Standard deviations of a framed cap; basis <c>house</c> or <c>measured</c>, from so many caps.</summary>
public sealed record StationScatter(double OffsetXMm, double OffsetYMm, double TiltDeg, string Basis, int Caps);

/// <summary>How far off is aimed at, accepted, and allowed by the customer; mm and degrees.</summary>
public sealed record StationTolerance(
    double AimMm,
    double AcceptMm,
    double CustomerMm,
    double AimDeg,
    double AcceptDeg);
