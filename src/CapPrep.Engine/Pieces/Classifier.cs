using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Pieces;

/// <summary>Says what rows are from their sizes. The limits were found by looking at real designs (house).</summary>
internal static class Classifier
{
    // Rows of a fill have stitches in between; how many depends on the width. Tenths of stitches per row, mm.
    private const int FillStitchesTenths = 18;
    private const int FillWidth = 4 * Fine.PerMillimeter;
    private const int WideFillHundredths = 135;
    private const int WideFillWidth = 7 * Fine.PerMillimeter;

    // Rows that get on so far are a column, however dense: work over foam.
    private const int ColumnAdvance = Fine.PerMillimeter;

    // Twice the advance of one row: 0.09 mm, 0.85 mm and 1.0 mm.
    private const int RetracedPitch = 18 * Fine.PerMillimeter / 100;
    private const int OpenZigzagPitch = 170 * Fine.PerMillimeter / 100;
    private const int OpenFillPitch = 200 * Fine.PerMillimeter / 100;

    // A limit decides without doubt when the value is this share beyond it.
    private const int ClearPercent = 10;

    // Fewer rows than these can be anything.
    private const int ClearRows = 8;

    public static StitchClass ClassOf(ChainMeasures rows) =>
        IsRetraced(rows) ? StitchClass.Retraced
        : IsFill(rows) ? (rows.Pitch > OpenFillPitch ? StitchClass.OpenFill : StitchClass.Fill)
        : rows.Pitch > OpenZigzagPitch ? StitchClass.OpenZigzag
        : StitchClass.Satin;

    /// <summary>No limit is near.</summary>
    public static bool IsSure(ChainMeasures rows) =>
        rows.Rows >= ClearRows
        && ClassOf(rows) == ClassOf(rows with { Pitch = Share(rows.Pitch, 100 - ClearPercent), Width = Share(rows.Width, 100 - ClearPercent) })
        && ClassOf(rows) == ClassOf(rows with { Pitch = Share(rows.Pitch, 100 + ClearPercent), Width = Share(rows.Width, 100 + ClearPercent) });

    private static bool IsRetraced(ChainMeasures rows) =>
        rows.Pitch < RetracedPitch && rows.Advance < ColumnAdvance && 2L * rows.Advance < RetracedPitch * (long)rows.Rows;

    private static bool IsFill(ChainMeasures rows) =>
        (10L * rows.RowStitches >= FillStitchesTenths * (long)rows.Rows && rows.Width > FillWidth)
        || (100L * rows.RowStitches >= WideFillHundredths * (long)rows.Rows && rows.Width > WideFillWidth);

    private static int Share(int value, int percent) => (int)((long)value * percent / 100);
}
