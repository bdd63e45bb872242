using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Says what rows are from their sizes. The limits were found by looking at real designs (house).</summary>
internal static class Classifier
{
    /// <summary>Fewer rows than these can be anything.</summary>
    public const int ClearRows = 8;

    // Rows of a fill have stitches in between; how many depends on the width. Tenths of stitches per row, mm.
    private const int FillStitchesTenths = 18;
    private const int FillWidth = 4 * Fine.PerMillimeter;
    private const int WideFillHundredths = 135;
    private const int WideFillWidth = 7 * Fine.PerMillimeter;

    // A wide column is satin too when it turns and its rows are split evenly, of 100 split rows and the rows themselves.
    private const int EvenPercent = 80;
    private const int FewestTurningRows = 16;
    private const int MostSplit = 4;

    // A straight one, when it is longer than wide and split even more evenly, in two or three.
    private const int VeryEvenPercent = 90;
    private const int MostStraightSplit = 3;

    // Rows that get on so far are a column, however dense: work over foam.
    private const int ColumnAdvance = Fine.PerMillimeter;

    // Twice the advance of one row: 0.09 mm, 0.85 mm and 1.0 mm.
    private const int RetracedPitch = 18 * Fine.PerMillimeter / 100;
    private const int OpenZigzagPitch = 170 * Fine.PerMillimeter / 100;
    private const int OpenFillPitch = 200 * Fine.PerMillimeter / 100;

    // A limit decides without doubt when the value is this share beyond it.
    private const int ClearPercent = 10;


    public static StitchClass ClassOf(ChainMeasures rows) =>
        IsRetraced(rows) ? StitchClass.Retraced
        : IsFill(rows) ? (rows.Pitch > OpenFillPitch ? StitchClass.OpenFill : StitchClass.Fill)
        : rows.Pitch > OpenZigzagPitch ? StitchClass.OpenZigzag
        : StitchClass.Satin;

    /// <summary>No limit is near.</summary>
    public static bool IsSure(ChainMeasures rows) =>
        rows.Rows >= ClearRows
        && !IsDoubtfulSplit(rows)
        && ClassOf(rows) == ClassOf(Scaled(rows, 100 - ClearPercent))
        && ClassOf(rows) == ClassOf(Scaled(rows, 100 + ClearPercent));

    private static ChainMeasures Scaled(ChainMeasures rows, int percent) => rows with
    {
        Pitch = Share(rows.Pitch, percent),
        Width = Share(rows.Width, percent),
        RowStitches = Math.Max(rows.Rows, Share(rows.RowStitches, percent)),
    };

    /// <summary>Split like satin, but neither turning nor unlike a fill of few stitches to a row.</summary>
    private static bool IsDoubtfulSplit(ChainMeasures rows) =>
        HasFillRows(rows) && !IsTurningSatin(rows) && IsEven(rows, EvenPercent) && IsSplitAtMost(rows, MostStraightSplit);

    private static bool IsRetraced(ChainMeasures rows) =>
        rows.Pitch < RetracedPitch && rows.Advance < ColumnAdvance && 2L * rows.Advance < RetracedPitch * (long)rows.Rows;

    private static bool IsFill(ChainMeasures rows) => HasFillRows(rows) && !IsSplitSatin(rows);

    private static bool IsSplitSatin(ChainMeasures rows) => rows.Pitch <= OpenZigzagPitch && (IsTurningSatin(rows) || IsStraightSatin(rows));

    private static bool IsTurningSatin(ChainMeasures rows) =>
        rows.Rows >= FewestTurningRows && rows.IsTurning && IsEven(rows, EvenPercent) && IsSplitAtMost(rows, MostSplit);

    private static bool IsStraightSatin(ChainMeasures rows) =>
        rows.Rows >= FewestTurningRows && 2L * rows.Advance >= 3L * rows.Width && IsEven(rows, VeryEvenPercent) && IsSplitAtMost(rows, MostStraightSplit);

    private static bool IsEven(ChainMeasures rows, int percent) => 100L * rows.Even >= percent * (long)rows.Split;

    private static bool IsSplitAtMost(ChainMeasures rows, int stitches) => rows.RowStitches <= (long)stitches * rows.Rows;

    private static bool HasFillRows(ChainMeasures rows) =>
        (10L * rows.RowStitches >= FillStitchesTenths * (long)rows.Rows && rows.Width > FillWidth)
        || (100L * rows.RowStitches >= WideFillHundredths * (long)rows.Rows && rows.Width > WideFillWidth);

    private static int Share(int value, int percent) => (int)((long)value * percent / 100);
}
