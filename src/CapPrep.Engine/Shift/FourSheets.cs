using CapPrep.Engine.Shift.Cloth;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Shift;

/// <summary>The assumptions between which a real cap front lies.</summary>
public enum SheetKind
{
    /// <summary>As stiff in every direction, held along the brim seam alone.</summary>
    StiffSidesFree,

    /// <summary>As stiff in every direction, at its lower sides held by posts and clips too.</summary>
    StiffSidesHeld,

    /// <summary>Cloth that shears easily, held along the brim seam alone.</summary>
    SoftSidesFree,

    /// <summary>Cloth that shears easily, at its lower sides held by posts and clips too.</summary>
    SoftSidesHeld,
}

/// <summary>
/// The front of a cap style as four sheets of cloth, factored and ready. They depend on the style and on the frame
/// alone: a host makes them once per version and hands them over.
/// </summary>
public sealed class FourSheets
{
    // House: the part of a front that a design can move, and a mesh fine enough for the mean shift of an element.
    private const double HalfWidthMm = 90;
    private const double MostHeightMm = 110;
    private const double MeshMm = 5;

    // House: posts and clips hold the sides up to here where the frame does not say.
    private const double HeldBelowMm = 45;

    // From memory, 0 to 0.002: friction of the backing on the needle plate.
    private const double GroundNPerMm3 = 0.0005;

    private static readonly SheetKind[] Kinds = Enum.GetValues<SheetKind>();

    private readonly Sheet[] _sheets;

    private FourSheets(Sheet[] sheets, SheetStiffness cloth) => (_sheets, Cloth) = (sheets, cloth);

    /// <summary>Parameters that a style without its own is given: from memory, soft cotton twill.</summary>
    public static SheetStiffness CommonCloth { get; } = new(0.03, 0.05, 0.2, 8, 12, 0.3, 0.15, 0.01);

    internal SheetStiffness Cloth { get; }

    internal IReadOnlyList<Sheet> Sheets => _sheets;

    /// <summary>Makes the sheets of a style on a frame.</summary>
    public static FourSheets Of(CapStyle style, CapFrame frame)
    {
        var cloth = style.Shift ?? CommonCloth;
        var rows = Math.Max(2, (int)(Math.Min(MostHeightMm, style.CrownHeightMm) / MeshMm));
        var shape = new SheetShape(-HalfWidthMm, 0, MeshMm, (int)(2 * HalfWidthMm / MeshMm), rows);
        var heldBelow = frame.SidesHeldBelowMm ?? HeldBelowMm;
        return new([.. Kinds.Select(kind => new Sheet(shape, MaterialOf(kind, cloth), HoldOf(kind, heldBelow), GroundNPerMm3))], cloth);
    }

    private static SheetMaterial MaterialOf(SheetKind kind, SheetStiffness cloth) =>
        kind is SheetKind.StiffSidesFree or SheetKind.StiffSidesHeld ? SheetMaterial.Even : SheetMaterial.Soft(cloth);

    private static Func<double, double, (bool Across, bool Up)> HoldOf(SheetKind kind, double heldBelow)
    {
        var sides = kind is SheetKind.StiffSidesHeld or SheetKind.SoftSidesHeld;
        return (x, y) =>
        {
            var held = y <= 0 || (sides && Math.Abs(x) >= HalfWidthMm && y < heldBelow);
            return (held, held);
        };
    }
}
