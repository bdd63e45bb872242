namespace CapPrep.Engine.Shift;

/// <summary>Whether the sheet was fitted to sew-outs of this style.</summary>
public enum ShiftCalibration
{
    /// <summary>Strains are from memory: only ratios hold, lengths are ranges.</summary>
    None,
}

/// <summary>What the two orders do on one sheet.</summary>
/// <param name="Sheet">The assumption.</param>
/// <param name="DriftRatio">How far the sewn moves afterward in the order that is sewn or proposed, over the received one.</param>
/// <param name="HeldRatio">The same where the backing holds what is sewn.</param>
public sealed record SheetRatio(SheetKind Sheet, double DriftRatio, double HeldRatio);

/// <summary>A length that nobody has measured, mm: between the mildest and the strongest assumption.</summary>
public readonly record struct ShiftRange(double FromMm, double ToMm)
{
    /// <summary>The same way under every assumption.</summary>
    public bool HasOneDirection => FromMm >= 0 || ToMm <= 0;
}

/// <summary>How far the cloth under an element has moved when it is sewn, against seam and brim.</summary>
/// <param name="Element">Its index.</param>
/// <param name="Across">To the right.</param>
/// <param name="Up">From the brim up.</param>
/// <param name="Says">In one sentence.</param>
public sealed record PriorShift(int Element, ShiftRange Across, ShiftRange Up, string Says);

/// <summary>How far the cloth moves between a fill and its border.</summary>
/// <param name="Fill">Index of the element that is bordered.</param>
/// <param name="Border">Index of the first element of its border.</param>
/// <param name="Gap">The length of that way.</param>
public sealed record BorderGap(int Fill, int Border, ShiftRange Gap);

/// <summary>Where an element goes after it was sewn, mm at the strain of the style; for pictures.</summary>
/// <param name="Element">Its index.</param>
/// <param name="Received">In the received order.</param>
/// <param name="Proposed">In the proposed one.</param>
public sealed record ElementDrift(int Element, ClothShift Received, ClothShift Proposed);

/// <summary>What the sheet model says of the received and the proposed order.</summary>
public sealed record ShiftReport
{
    public required ShiftCalibration Calibration { get; init; }

    /// <summary>Mean of the four sheets.</summary>
    public required double DriftRatio { get; init; }

    /// <summary>One per <see cref="SheetKind"/>.</summary>
    public required IReadOnlyList<SheetRatio> Sheets { get; init; }

    /// <summary>The proposed order moves the cloth noticeably more on at least three sheets.</summary>
    public required bool Disagrees { get; init; }

    /// <summary>Of the order that is sewn, farthest first.</summary>
    public required IReadOnlyList<PriorShift> PriorShifts { get; init; }

    /// <summary>Of the order that is sewn, widest first.</summary>
    public required IReadOnlyList<BorderGap> BorderGaps { get; init; }

    /// <summary>In received order.</summary>
    public required IReadOnlyList<ElementDrift> Drifts { get; init; }

    /// <summary>In one sentence.</summary>
    public required string Says { get; init; }

    /// <summary>Sheets on which the proposed order moves the cloth less.</summary>
    public int LowerOn => Sheets.Count(sheet => sheet.DriftRatio < 1);
}
