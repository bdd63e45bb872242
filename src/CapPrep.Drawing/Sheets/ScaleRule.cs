namespace CapPrep.Drawing.Sheets;

/// <summary>A line of 50 mm with centimeter strokes, by which anybody sees whether a print has its true size.</summary>
internal static class ScaleRule
{
    public const int Length = 5000;
    private const int Centimeter = 1000;

    /// <param name="left">Left end of the rule.</param>
    public static void Draw(SheetPad pad, SheetPoint left, string says, Lettering set)
    {
        var stroke = new Stroke(25, Ink.Black);
        pad.Line(left, left.Move(Length, 0), stroke);
        for (var x = 0; x <= Length; x += Centimeter)
            pad.Line(left.Move(x, 0), left.Move(x, x % Length == 0 ? -250 : -150), stroke);
        pad.Text(says, new SheetBox(left.X, left.Y + 60, Length + 1500, set.LineHeight), set);
    }
}
