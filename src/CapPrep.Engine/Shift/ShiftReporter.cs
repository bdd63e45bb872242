using System.Globalization;
using CapPrep.Engine.Checks;

namespace CapPrep.Engine.Shift;

/// <summary>Puts into words and ranges what the sheets say of an order.</summary>
internal sealed class ShiftReporter
{
    // House: soft backing; from 0.01 to 1 N/mm3 is possible.
    private const double AnchorNPerMm3 = 0.01;

    // Strains of cloth on caps lie between 1 and 5 % (from memory).
    private const double LeastStrain = 0.01;
    private const double MostStrain = 0.05;

    // House: less is not seen on a cap.
    private const double SeenMm = 0.1;
    private const int MostRows = 10;

    private readonly Subject _subject;
    private readonly ShiftModel _model;
    private readonly int[] _received;
    private readonly IReadOnlyList<int> _proposed;
    private readonly IReadOnlyList<int> _sewn;

    private ShiftReporter(Subject subject, ShiftModel model, IReadOnlyList<int> proposed, bool isProposedSewn)
    {
        (_subject, _model, _proposed) = (subject, model, proposed);
        _received = [.. Enumerable.Range(0, model.Count)];
        _sewn = isProposedSewn ? proposed : _received;
    }

    /// <param name="subject">The design.</param>
    /// <param name="model">Its influences.</param>
    /// <param name="proposed">The proposed order.</param>
    /// <param name="isProposedSewn">Whether that is the order that is sewn.</param>
    internal static ShiftReport Of(Subject subject, ShiftModel model, IReadOnlyList<int> proposed, bool isProposedSewn)
    {
        var reporter = new ShiftReporter(subject, model, proposed, isProposedSewn);
        var sheets = reporter.Sheets();
        return new()
        {
            Calibration = ShiftCalibration.None,
            DriftRatio = model.RatioOf(proposed),
            Sheets = sheets,
            Disagrees = model.Disagrees(proposed),
            PriorShifts = reporter.PriorShifts(),
            BorderGaps = reporter.BorderGaps(),
            Drifts = reporter.Drifts(),
            Says = Say(sheets),
        };
    }

    private List<SheetRatio> Sheets()
    {
        var (free, held) = (_model.RatiosOf(_proposed), _model.AnchoredRatiosOf(_proposed, AnchorNPerMm3));
        return [.. Enum.GetValues<SheetKind>().Select((kind, at) => new SheetRatio(kind, free[at], held[at]))];
    }

    private List<PriorShift> PriorShifts()
    {
        var moved = _model.Sheets.Select(sheet => Drift.Before(sheet, _sewn)).ToArray();
        var shifts = new List<(PriorShift Shift, double Far)>();
        for (var element = 0; element < _model.Count; element++)
        {
            var across = RangeOf(moved.Select(sheet => sheet[element].AcrossMm));
            var up = RangeOf(moved.Select(sheet => sheet[element].UpMm));
            var far = moved.Average(sheet => Math.Sqrt(sheet[element].Squared));
            if (far >= SeenMm)
                shifts.Add((new(element, across, up, Say(element, across, up)), far));
        }

        return [.. shifts.OrderByDescending(shift => shift.Far).ThenBy(shift => shift.Shift.Element).Take(MostRows).Select(shift => shift.Shift)];
    }

    private List<BorderGap> BorderGaps()
    {
        var pairs = _subject.Borders
            .Select(border => (Fill: border.Fill.Element, Border: border.Parts[0].Element))
            .Where(pair => pair.Fill != pair.Border)
            .Distinct();
        var gaps = pairs.Select(pair => new BorderGap(pair.Fill, pair.Border, RangeOf(_model.Sheets.Select(sheet => GapOn(sheet, pair)))));
        return [.. gaps.Where(gap => gap.Gap.ToMm >= SeenMm).OrderByDescending(gap => gap.Gap.ToMm).ThenBy(gap => gap.Border).Take(MostRows)];
    }

    private double GapOn(Influence sheet, (int Fill, int Border) pair) =>
        Math.Sqrt(Drift.GapOf(sheet, _sewn, pair.Fill, pair.Border).Squared);

    private List<ElementDrift> Drifts()
    {
        var received = MeanOf(_received);
        var proposed = MeanOf(_proposed);
        return [.. _received.Select(element => new ElementDrift(element, received[element], proposed[element]))];
    }

    private ClothShift[] MeanOf(IReadOnlyList<int> order)
    {
        var moved = _model.Sheets.Select(sheet => Drift.After(sheet, order)).ToArray();
        return [.. _received.Select(element => new ClothShift(moved.Average(sheet => sheet[element].AcrossMm), moved.Average(sheet => sheet[element].UpMm)))];
    }

    /// <summary>Shifts grow with the strain, so the range of strains is one of lengths.</summary>
    private ShiftRange RangeOf(IEnumerable<double> onSheets)
    {
        double[] values = [.. onSheets];
        var strain = (_subject.Setup.Style?.Shift ?? FourSheets.CommonCloth).E1Fill;
        double[] ends = [.. values.Select(value => value * LeastStrain / strain), .. values.Select(value => value * MostStrain / strain)];
        return new(Rounded(ends.Min()), Rounded(ends.Max()));
    }

    private static double Rounded(double mm) => Math.Round(mm, 2, MidpointRounding.AwayFromZero);

    private static string Say(IReadOnlyCollection<SheetRatio> sheets)
    {
        var (less, more) = (sheets.Count(sheet => sheet.DriftRatio < 1), sheets.Count(sheet => sheet.DriftRatio > 1));
        return less == 0 && more == 0 ? "The sheet model sees no difference between the two orders."
            : less >= more ? $"The proposed order moves the cloth less on {less} of {sheets.Count} sheets."
            : $"The proposed order moves the cloth more on {more} of {sheets.Count} sheets.";
    }

    private static string Say(int element, ShiftRange across, ShiftRange up)
    {
        string?[] ways = [Way(across, "to the right", "to the left"), Way(up, "upward", "toward the brim")];
        var told = ways.OfType<string>().ToArray();
        return told.Length == 0
            ? $"The cloth under element {element + 1} has moved when it is sewn; the sheets do not agree which way."
            : $"When element {element + 1} is sewn, the cloth under it has moved {string.Join(" and ", told)}.";
    }

    private static string? Way(ShiftRange range, string positive, string negative)
    {
        var (least, most) = range.FromMm >= 0 ? (range.FromMm, range.ToMm) : (-range.ToMm, -range.FromMm);
        if (!range.HasOneDirection || most < SeenMm)
            return null;
        return string.Create(CultureInfo.InvariantCulture, $"about {least:0.0} to {most:0.0} mm {(range.FromMm >= 0 ? positive : negative)}");
    }
}
