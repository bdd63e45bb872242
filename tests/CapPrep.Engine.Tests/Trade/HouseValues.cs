namespace CapPrep.Engine.Tests.Trade;

/// <summary>
/// House values of the eight starter styles, typed by hand apart from the catalog's files; y from the brim seam along
/// the cloth, x from the front's center, mm. Common practice, no source, unless the file names a row.
/// </summary>
/// <param name="Top">Top line at x = 0: warn, hold.</param>
/// <param name="Falls">What the top line has fallen by at x = 30, 50, 70.</param>
/// <param name="SideX">x of the side seam at y = 15, 50, 75; null: none.</param>
/// <param name="Eyelet">Center of the right one; null: none.</param>
/// <param name="Seam">Thickness step, groove, layers; null: one-piece front.</param>
/// <param name="Strip">Backing: width from post to post, height.</param>
/// <param name="Side">Zone of a side: warn limits of width and height; null: not sewn.</param>
internal sealed record HouseValues(
    string Id,
    double CrownMm,
    (double Nominal, double Floor) Base,
    (double Warn, double Hold) Height,
    (double Warn, double Hold) Top,
    (double At30, double At50, double At70) Falls,
    (double Warn, double Hold) Width,
    (double At15, double At50, double At75)? SideX,
    (double X, double Y)? Eyelet,
    double BrimBowMm,
    string Stiffener,
    (double Step, double Groove, int Layers)? Seam,
    bool Soften,
    int BackingPieces,
    (double Width, double Height) Strip,
    string Needle,
    int Speed,
    int? FoamSpeed,
    int? MetallicSpeed,
    double FramingSeconds,
    double Scatter,
    string CenterFoundBy,
    string Group,
    string Techniques,
    double? FoamHeightMm,
    (double Width, double Height)? Side,
    bool Back)
{
    public static IReadOnlyList<HouseValues> All { get; } =
    [
        new(
            "six-panel-structured-mid", 170, (13, 10), (55, 63.5), (68, 76), (3, 8, 16), (127, 150), (96, 87, 74), (37, 82), 3,
            "fused buckram", (8, 1.0, 6), true, 1, (300, 100), "75/11 sharp; 80/12", 650, 500, 500, 45, 0.8, "seam", "A",
            "flat foam applique patch", null, (76, 38), true),
        new(
            "six-panel-structured-low", 150, (13, 10), (52, 60), (65, 73), (4, 11, 22), (120, 140), (96, 84, 68), (35, 74), 4,
            "fused buckram", (8, 1.0, 6), true, 1, (300, 100), "75/11 sharp; 80/12", 600, 500, 500, 45, 0.8, "seam", "A-low",
            "flat foam", 45, (76, 35), true),
        new(
            "six-panel-structured-high", 185, (13, 10), (63.5, 76), (76, 89), (2, 5, 10), (127, 150), (96, 88, 78), (38, 90), 1,
            "fused buckram", (8, 1.0, 6), true, 1, (300, 110), "80/12 sharp", 650, 500, 500, 45, 0.8, "seam", "A-high",
            "flat foam partFoam applique patch", null, (76, 45), true),
        new(
            "six-panel-unstructured-low", 150, (13, 10), (50, 56), (63, 69), (5, 13, 25), (114, 130), (95, 83, 67), (35, 74), 4,
            "none", (7, 0.8, 4), false, 2, (300, 100), "75/11 sharp or light ball", 550, null, 450, 60, 1.0, "seam; check", "U",
            "flat patch", null, (70, 35), true),
        new(
            "five-panel-foam-high", 180, (13, 10), (60, 70), (73, 83), (2, 5, 10), (120, 140), (95, 88, 78), null, 1,
            "foam", null, false, 1, (300, 110), "75/11", 650, 550, 500, 40, 1.2, "brim notch, equal distance", "F",
            "flat foam patch", null, null, false),
        new(
            "five-panel-structured-mid", 170, (13, 10), (57, 65), (70, 78), (3, 7, 14), (127, 150), (96, 87, 76), null, 3,
            "fused, one piece", null, true, 1, (300, 100), "75/11 sharp", 700, 500, 500, 40, 1.2, "brim notch, equal distance", "S5",
            "flat foam partFoam applique patch", null, (76, 38), true),
        new(
            "five-panel-soft-camp", 78, (13, 10), (50, 58), (63, 71), (1, 3, 6), (110, 130), (80, 78, 76), null, 1,
            "none or light", null, false, 2, (300, 100), "75/11 light ball", 600, null, 450, 60, 1.3, "brim notch, equal distance", "C",
            "flat patch", null, (60, 35), true),
        new(
            "visor", 54, (10, 8), (32, 38), (42, 48), (3, 9, 18), (102, 115), null, null, 5,
            "band", null, false, 1, (250, 75), "75/11", 550, null, 450, 55, 1.2, "middle of the brim", "V",
            "flat", null, null, false),
    ];
}
