using CapPrep.Engine.Checks;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Desk;

/// <summary>The largest size at which a design fits its cap, and whether its tape may simply be made that small.</summary>
internal static class ScaleFit
{
    // A stitch tape keeps its stitches; below nine tenths they lie too close (house).
    private const double Least = 0.9;

    /// <summary>0 to below 1, to 0.01 downward; 0 when no size fits.</summary>
    internal static double Largest(Subject job)
    {
        var widest = WarnOf(job, "place.too-wide") ?? job.Seated.Zone.Width.WarnAboveMm;
        var byWidth = job.Seated.Box.Width == 0 ? 1 : widest / job.Seated.Box.ToMillimeters().Width;
        return Math.Floor(100 * Math.Min(Math.Min(job.Seated.LargestScale, byWidth), 1) + 1e-9) / 100;
    }

    /// <summary>Null when nine tenths are still too large, or letters, columns or rows would pass their limits.</summary>
    internal static ScaledTape? Scaled(Subject job, double scale)
    {
        if (scale is < Least or >= 1 || !KeepsLetters(job, scale) || !KeepsColumns(job, scale) || !KeepsRows(job, scale))
            return null;
        var box = job.Seated.Box.ToMillimeters();
        var smallest = job.TextLines.Count == 0 ? 0 : scale * job.TextLines.Min(line => line.LetterHeightMm);
        var percent = Figure.Plain(100 * scale, 0);
        return new(scale, box.Width * scale, box.Height * scale, smallest,
            $"Same cap, tape scaled to {percent} %: it keeps its stitches, so the rows lie closer. Sew one cap first.");
    }

    internal static NewSize? Redigitized(Subject job, double scale)
    {
        if (scale <= 0)
            return null;
        var box = job.Seated.Box.ToMillimeters();
        var (width, height) = (Math.Floor(box.Width * scale), Math.Floor(box.Height * scale));
        return new(width, height, $"Same cap, new digitizing at {Figure.Plain(width, 0)} x {Figure.Plain(height, 0)} mm.");
    }

    private static bool KeepsLetters(Subject job, double scale) =>
        WarnOf(job, "lettering.small") is not { } least || job.TextLines.All(line => IsSafe(line.LetterHeightMm, scale, least));

    private static bool KeepsColumns(Subject job, double scale) =>
        WarnOf(job, "stitch.column-narrow") is not { } least || Top(job, StitchClass.Satin).All(piece => IsSafe(piece.WidthMm, scale, least));

    private static bool KeepsRows(Subject job, double scale) =>
        WarnOf(job, "stitch.crowded") is not { } least || Top(job, StitchClass.Satin, StitchClass.Fill).All(piece => IsSafe(piece.PitchMm, scale, least));

    /// <summary>What passes the limit already is not made worse by much; what does not must stay on the good side.</summary>
    private static bool IsSafe(double size, double scale, double least) => size < least || size * scale >= least;

    private static IEnumerable<Piece> Top(Subject job, params StitchClass[] classes) =>
        job.Ground.All.Where(ground => classes.Contains(ground.Piece.Class) && ground.UnderCover == 0).Select(ground => ground.Piece);

    private static double? WarnOf(Subject job, string rule) => job.Setup.Rules.Find(rule)?
        .LimitFor(Severity.Warn, job.Seated.Zone, job.Setup.Frame, job.Setup.Machine)?.Value;
}
