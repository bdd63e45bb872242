using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Measures;

namespace CapPrep.Drawing.Caps;

/// <summary>Where cap-front millimeters come to lie on a sheet.</summary>
/// <param name="Window">What is shown; nothing is drawn outside.</param>
/// <param name="Zero">Where x = 0, y = 0 lies.</param>
/// <param name="Reduction">1: true size; 2: half size; and so on.</param>
/// <param name="Turned">Brim up, as on the gauge and at the machine.</param>
internal sealed record CapView(SheetBox Window, SheetPoint Zero, int Reduction, bool Turned)
{
    private const int PerMm = 100;

    /// <summary>The largest view at 1:1, 1:2, 1:3 ... that shows a box of the cap front whole.</summary>
    public static CapView Fit(SheetBox window, BoxMm needed, bool turned = false)
    {
        var reduction = Math.Max(Times(Hundredths(needed.Width), window.Width), Times(Hundredths(needed.Height), window.Height));
        return Place(window, needed, Math.Max(1, reduction), turned);
    }

    /// <summary>The same, with the box in the middle of the window's height.</summary>
    public static CapView Centered(SheetBox window, BoxMm needed)
    {
        var view = Fit(window, needed);
        return view with { Zero = view.Zero.Move(0, (view.Length(needed.Height) - window.Height) / 2) };
    }

    public SheetPoint At(double xMm, double yMm) => At(Hundredths(xMm), Hundredths(yMm));

    public SheetPoint At(PointMm point) => At(point.X, point.Y);

    public SheetPoint At(TapePoint point) =>
        At(point.X * (PerMm / Tenths.PerMillimeter), point.Y * (PerMm / Tenths.PerMillimeter));

    /// <summary>A length of the cap on the sheet, 0.01 mm.</summary>
    public int Length(double mm) => Divide(Hundredths(mm));

    public SheetBox Box(BoxMm box)
    {
        var (a, b) = (At(box.Left, box.Bottom), At(box.Right, box.Top));
        var (x, y) = (Math.Min(a.X, b.X), Math.Min(a.Y, b.Y));
        return new SheetBox(x, y, Math.Abs(a.X - b.X), Math.Abs(a.Y - b.Y));
    }

    private static CapView Place(SheetBox window, BoxMm needed, int reduction, bool turned)
    {
        var (middle, bottom) = ((needed.Left + needed.Right) / 2, needed.Bottom);
        var view = new CapView(window, new SheetPoint(0, 0), reduction, turned);
        var edge = view.At(middle, bottom);
        var x = window.Center.X - edge.X;
        return view with { Zero = new SheetPoint(x, turned ? window.Y - edge.Y : window.Bottom - edge.Y) };
    }

    private SheetPoint At(int x, int y) => Turned
        ? Zero.Move(-Divide(x), Divide(y))
        : Zero.Move(Divide(x), -Divide(y));

    private int Divide(int hundredths) => Reduction == 1
        ? hundredths
        : (int)Math.Round((double)hundredths / Reduction, MidpointRounding.AwayFromZero);

    private static int Times(int needed, int room) => (int)(((long)needed + room - 1) / room);

    private static int Hundredths(double mm) => (int)Math.Round(mm * PerMm, MidpointRounding.AwayFromZero);
}
