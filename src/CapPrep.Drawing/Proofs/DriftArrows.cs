using CapPrep.Drawing.Sheets;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Shift;

namespace CapPrep.Drawing.Proofs;

/// <summary>Arrows from the middle of elements to where the sheet model puts them after they were sewn, much lengthened.</summary>
internal static class DriftArrows
{
    /// <summary>How much longer than what it stands for.</summary>
    public const int Times = 20;

    private const int Most = 12;
    private const double LeastMm = 0.05;
    private const int PerMillimeter = 100;
    private const int LineWidth = 25;
    private const int HeadLength = 110;
    private const int HeadHalf = 50;

    /// <summary>The farthest moves, none for what nobody would see.</summary>
    public static void Draw(SheetPad pad, SmallView view, IReadOnlyList<Element> elements, IReadOnlyList<ClothShift> shifts)
    {
        var seen = elements
            .Where(element => Length(shifts[element.Index]) >= LeastMm)
            .OrderByDescending(element => Length(shifts[element.Index]))
            .ThenBy(element => element.Index)
            .Take(Most);
        foreach (var element in seen)
            Draw(pad, view.Box(element.Box).Center, view, shifts[element.Index]);
    }

    /// <summary>At least one arrow is drawn.</summary>
    public static bool Any(IEnumerable<ClothShift> shifts) => shifts.Any(shift => Length(shift) >= LeastMm);

    private static void Draw(SheetPad pad, SheetPoint from, SmallView view, ClothShift shift)
    {
        var to = from.Move(
            view.Length((int)Math.Round(shift.AcrossMm * Times * PerMillimeter, MidpointRounding.AwayFromZero)),
            -view.Length((int)Math.Round(shift.UpMm * Times * PerMillimeter, MidpointRounding.AwayFromZero)));
        var (across, down) = ((double)(to.X - from.X), (double)(to.Y - from.Y));
        var length = Math.Sqrt((across * across) + (down * down));
        if (length < 1)
            return;
        (across, down) = (across / length, down / length);
        pad.Add(new LinesMark([[from, to]], new Stroke(LineWidth, Ink.Brick)));
        pad.Add(new ShapeMark([[Beside(to, HeadLength, 0), Beside(to, 0, HeadHalf), Beside(to, 0, -HeadHalf)]], Ink.Brick));

        SheetPoint Beside(SheetPoint point, int ahead, int aside) => point.Move(
            (int)Math.Round((ahead * across) - (aside * down), MidpointRounding.AwayFromZero),
            (int)Math.Round((ahead * down) + (aside * across), MidpointRounding.AwayFromZero));
    }

    private static double Length(ClothShift shift) => Math.Sqrt((shift.AcrossMm * shift.AcrossMm) + (shift.UpMm * shift.UpMm));
}
