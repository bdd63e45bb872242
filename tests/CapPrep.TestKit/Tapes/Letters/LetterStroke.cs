namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>
/// A stroke of a letter as a line of points: x from the letter's left edge, y from the base line, in hundredths of the
/// x-height; capitals and ascenders reach 140, descenders -40.
/// </summary>
/// <param name="Points">At least two.</param>
/// <param name="IsRing">It ends where it begins.</param>
internal sealed record LetterStroke(IReadOnlyList<(double X, double Y)> Points, bool IsRing = false)
{
    private const double StepDegrees = 15;

    public static LetterStroke Line(params (double X, double Y)[] points) => new(points);

    public static LetterStroke Stem(double x, double from, double to) => Line((x, from), (x, to));

    public static LetterStroke Bar(double y, double from, double to) => Line((from, y), (to, y));

    public static LetterStroke Ring(double x, double y, double halfWidth, double halfHeight) =>
        new([.. Turn(x, y, halfWidth, halfHeight, 90, 450)], IsRing: true);

    /// <summary>Part of a ring, counter-clockwise from an angle to a larger one or clockwise to a smaller one.</summary>
    public static LetterStroke Arc(double x, double y, double halfWidth, double halfHeight, double from, double to) =>
        new([.. Turn(x, y, halfWidth, halfHeight, from, to)]);

    /// <summary>The stroke, then straight on to a point.</summary>
    public LetterStroke Then(double x, double y) => this with { Points = [.. Points, (x, y)] };

    /// <summary>From a point straight to the stroke.</summary>
    public LetterStroke After(double x, double y) => this with { Points = [(x, y), .. Points] };

    /// <summary>One stroke and, without lifting, the other.</summary>
    public LetterStroke Then(LetterStroke next) => this with { Points = [.. Points, .. next.Points] };

    private static IEnumerable<(double X, double Y)> Turn(
        double x, double y, double halfWidth, double halfHeight, double from, double to)
    {
        var steps = (int)Math.Ceiling(Math.Abs(to - from) / StepDegrees);
        for (var k = 0; k <= steps; k++)
        {
            var angle = Math.PI / 180 * (from + ((to - from) * k / steps));
            yield return (x + (halfWidth * Math.Cos(angle)), y + (halfHeight * Math.Sin(angle)));
        }
    }
}
