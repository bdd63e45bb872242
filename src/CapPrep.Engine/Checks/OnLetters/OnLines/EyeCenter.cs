using CapPrep.Engine.Measures;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnLetters.OnLines;

/// <summary>
/// The word, or the element that carries the design, beside the middle of the box, because a small thing stands on one
/// side of it: the eye takes the word for the middle. Silent where the ticket says by what the design is centered, and
/// where more than a small thing stands beside the word, as in a badge with its name to the right.
/// </summary>
internal static class EyeCenter
{
    internal static readonly Check Check = new("place.eye-center", Needs.SeatedDesign, Find, Say);

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (subject.Seated.CenterBy != SeatingCenter.Box || subject.Ticket.Received.Seating?.OffsetRightMm is not null)
            return [];
        var (what, place, box) = MainOf(subject);
        return IsSmall(subject, box, rule)
            ? [new Occurrence(place) { Measured = Math.Abs(OffMm(subject, box)), Text = Spoken(subject, what, OffMm(subject, box)) }]
            : [];
    }

    /// <summary>The line with the most lettering, else the element with the most cover.</summary>
    private static (string What, Place Place, Box Box) MainOf(Subject subject)
    {
        if (subject.TextLines.MaxBy(line => line.Box.Width * line.LetterHeightMm) is { } line)
            return ("word", subject.PlaceOf(line), line.Box);
        var heaviest = subject.Reading.Elements.MaxBy(element => element.Cover.Area)!;
        return ("main part", subject.PlaceOf(heaviest.First, heaviest.Last), subject.Points.BoxOf(heaviest.First, heaviest.Last));
    }

    /// <summary>Few stitches beside a box, or a few more that stand less than half as high: a swash, a dash.</summary>
    private static bool IsSmall(Subject subject, Box box, RuleInForce rule)
    {
        var (count, lowest, highest) = (0, int.MaxValue, int.MinValue);
        for (var i = 0; i < subject.Points.Count; i++)
        {
            if (subject.Points.At(i) is var point && point.X >= box.Left && point.X <= box.Right)
                continue;
            count++;
            (lowest, highest) = (Math.Min(lowest, point.Y), Math.Max(highest, point.Y));
        }

        var share = (double)count / subject.Points.Count;
        return share <= rule.Parameter("besideShareAtMost")
            || (share <= rule.Parameter("lowBesideShareAtMost") && 2 * (highest - lowest) < box.Height);
    }

    /// <summary>To the viewer's right of the middle of the design's box, mm.</summary>
    private static double OffMm(Subject subject, Box box) =>
        (box.Left + box.Right - subject.Seated.Box.Left - subject.Seated.Box.Right) / (2.0 * Tenths.PerMillimeter);

    private static string Spoken(Subject subject, string what, double off)
    {
        var (from, to) = off > 0 ? ("right", "left") : ("left", "right");
        var middle = subject.Setup.Style!.CenterSeam is null ? "on the center" : "on the seam";
        return $"The {what}'s middle lies {Figure.Mm(Math.Abs(off))} to the viewer's {from} of the design's middle. "
            + $"Moved so far to the viewer's {to} it would lie {middle}.";
    }

    private static string Say(Report report) => report.Worst.Text;
}
