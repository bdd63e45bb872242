using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnSeam;

/// <summary>Trims in narrow columns where the cloth gets thicker beside the seam: needles bend there (fact row C09).</summary>
internal static class TrimOnStep
{
    internal static readonly Check Check = new(
        "seam.trim-on-step",
        Needs.SeatedDesign,
        Find,
        report => $"The thread is trimmed at {Figure.Count(report.WorstFirst.Count, "place")} on the step of the seam, in narrow columns.");

    private static IEnumerable<Occurrence> Find(Subject subject, RuleInForce rule)
    {
        if (SeamView.Of(subject) is not { } seam || subject.Setup.Style!.CenterSeam!.StepMm == 0)
            yield break;
        var (step, near) = (10 * subject.Setup.Style.CenterSeam.StepMm, 10 * rule.Parameter("nearMm"));
        Piece[] narrow = [.. subject.Reading.Pieces.Where(piece => piece.Class == StitchClass.Satin && piece.WidthMm < rule.Parameter("columnBelowMm"))];
        for (var i = 1; i < subject.Stitches.Count; i++)
        {
            if (subject.Stitches.Relations[i] != Relation.Cut)
                continue;
            foreach (var end in new[] { i - 1, i }.Where(end => Math.Abs(Math.Abs(seam.At(end).X) - step) <= near && Touches(subject, narrow, end)))
                yield return new(subject.PlaceOf(end, end));
        }
    }

    private static bool Touches(Subject subject, Piece[] narrow, int point)
    {
        var (at, grid) = (subject.Stitches.At(point), subject.Stitches.Grid);
        return narrow.Any(piece => piece.Blanket.Contains(grid.Column(at.X), grid.Row(at.Y)));
    }
}
