using CapPrep.Engine.Checks;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Shift;

/// <summary>
/// How the elements of one design move each other on the four sheets. Model values: they choose among orders that are
/// equally good otherwise, and inform; nothing is held for them.
/// </summary>
public sealed class ShiftModel
{
    // House: above it the sheets take longer than they are worth.
    private const int MostElements = 600;

    // House: one tenth more is noticeable, on three sheets of four; a mean shift of less is not.
    private const double Noticeable = 1.10;
    private const int SheetsThatMustAgree = 3;
    private const double SeenMm = 0.05;

    // A tenth of a micrometer.
    private const double WholePerMm = 10_000;

    private readonly Influence[] _sheets;
    private readonly int[] _received;
    private readonly double[] _receivedDrift;

    private ShiftModel(Influence[] sheets)
    {
        _sheets = sheets;
        _received = [.. Enumerable.Range(0, Count)];
        _receivedDrift = DriftsOf(_received);
        WholeShifts = Whole(sheets);
        WholeAreas = [.. sheets[0].Areas.Select(area => (long)Math.Round(area, MidpointRounding.AwayFromZero))];
    }

    /// <summary>Elements of the design.</summary>
    public int Count => _sheets[0].Count;

    internal IReadOnlyList<Influence> Sheets => _sheets;

    /// <summary>
    /// Shift of one element by another in 0.1 micrometers, across and up on each sheet: eight numbers per pair.
    /// </summary>
    internal int[] WholeShifts { get; }

    /// <summary>mm2.</summary>
    internal long[] WholeAreas { get; }

    /// <summary>
    /// Null where the model says nothing: off the front, in a frame that clamps the cloth all round, with one element or
    /// more than 600.
    /// </summary>
    internal static ShiftModel? Of(Subject subject)
    {
        var count = subject.Reading.Elements.Count;
        if (!subject.LiesOnFront || subject.Setup.Style is not { } style || count is < 2 or > MostElements
            || subject.Setup.Frame.Holds == FrameHold.FlatClamp)
            return null;
        var sheets = subject.Setup.Sheets ?? FourSheets.Of(style, subject.Setup.Frame);
        var loads = ElementLoads.Of(subject.Stitches, subject.Seated, subject.Reading, sheets);
        return new([.. sheets.Sheets.Select(sheet => Influence.Of(sheet, loads, withGive: true))]);
    }

    /// <summary>Drift of an order over that of the received one, as the mean of the four sheets, to four decimals.</summary>
    internal double RatioOf(IReadOnlyList<int> order) => Rounded(RatiosOf(order).Average());

    /// <summary>
    /// An order moves the cloth noticeably more than the received one on at least three sheets, and so far that it is
    /// seen.
    /// </summary>
    internal bool Disagrees(IReadOnlyList<int> order)
    {
        var drifts = DriftsOf(order);
        return drifts.Average() >= SeenMm
            && drifts.Where((drift, sheet) => drift > Noticeable * _receivedDrift[sheet]).Count() >= SheetsThatMustAgree;
    }

    /// <summary>The same on each sheet; 1 where the received order moves nothing.</summary>
    internal double[] RatiosOf(IReadOnlyList<int> order) =>
        [.. DriftsOf(order).Select((drift, sheet) => Over(drift, _receivedDrift[sheet]))];

    private double[] DriftsOf(IReadOnlyList<int> order) => [.. _sheets.Select(sheet => Drift.Of(sheet, Drift.After(sheet, order)))];

    /// <summary>The same where the backing holds what is sewn.</summary>
    internal double[] AnchoredRatiosOf(IReadOnlyList<int> order, double anchorNPerMm3) =>
    [
        .. _sheets.Select(sheet => Over(
            Drift.Of(sheet, AnchoredDrift.After(sheet, order, anchorNPerMm3)),
            Drift.Of(sheet, AnchoredDrift.After(sheet, _received, anchorNPerMm3)))),
    ];

    private static double Over(double drift, double received) => received > 0 ? Rounded(drift / received) : 1;

    private static double Rounded(double ratio) => Math.Round(ratio, 4, MidpointRounding.AwayFromZero);

    private static int[] Whole(Influence[] sheets)
    {
        var pairs = sheets[0].Shifts.Length;
        var whole = new int[pairs * 2 * sheets.Length];
        for (var pair = 0; pair < pairs; pair++)
        {
            for (var sheet = 0; sheet < sheets.Length; sheet++)
            {
                var shift = sheets[sheet].Shifts[pair];
                whole[(2 * ((pair * sheets.Length) + sheet)) + 0] = Whole(shift.AcrossMm);
                whole[(2 * ((pair * sheets.Length) + sheet)) + 1] = Whole(shift.UpMm);
            }
        }

        return whole;
    }

    private static int Whole(double mm) => (int)Math.Round(mm * WholePerMm, MidpointRounding.AwayFromZero);
}
