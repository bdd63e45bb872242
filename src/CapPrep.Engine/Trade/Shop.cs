using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Trade;

/// <summary>Sheet size that a shop prints on.</summary>
public enum Paper
{
    A4,
    Letter,
}

/// <summary>How lengths are printed.</summary>
public enum LengthUnits
{
    Mm,

    /// <summary>Millimeters first, the inch in brackets.</summary>
    MmInch,
}

/// <summary>What one shop has decided for all its jobs.</summary>
public sealed record Shop
{
    /// <summary>Id of the shop the body was written for; null: whichever shop sends it.</summary>
    public string? Id { get; init; }

    public required string Name { get; init; }

    public required ShopDefaults Defaults { get; init; }

    public required Paper Paper { get; init; }

    /// <summary>Where a body is silent: millimeters on A4, both on letter paper.</summary>
    public required LengthUnits Units { get; init; }

    /// <summary>Language of cards: <c>en</c>, <c>es</c> or <c>de</c>.</summary>
    public required string Language { get; init; }

    public required ShopInspection Inspection { get; init; }
}

/// <summary>Sampling used for orders that ask for it; level II at 2.5 where a body is silent.</summary>
/// <param name="Level">General inspection level of ISO 2859-1: <c>I</c>, <c>II</c> or <c>III</c>.</param>
/// <param name="Aql">Acceptance quality limit, percent, one of the preferred numbers of ISO 2859-1.</param>
public sealed record ShopInspection(string Level, double Aql)
{
    public static readonly ShopInspection Usual = new("II", 2.5);
}
