using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>What a digitizer looks for where letters meet the center seam.</summary>
internal static class SeamCare
{
    /// <summary>No narrow stroke stands along the seam, and small letters keep their strokes off it.</summary>
    internal static bool IsClean(IEnumerable<Part> letters, double seamX = 0) =>
        letters.OfType<Letter>().All(letter => IsClean(letter, seamX));

    /// <summary>From the seam to the edge of the nearest stroke, mm; 0 when one crosses it.</summary>
    internal static double Nearest(IEnumerable<Part> letters) => letters.OfType<Letter>()
        .SelectMany(letter => letter.OnCap().SelectMany(stroke => stroke.Steps(0.2)).Select(at => Math.Abs(at.X) - (letter.Face.Stroke / 2)))
        .Append(double.MaxValue)
        .Min(distance => Math.Max(0, distance));

    private static bool IsClean(Letter letter, double seamX)
    {
        var half = letter.Face.As == SewnAs.Running ? 0 : letter.Face.Stroke / 2;
        return letter.OnCap().All(stroke => IsClean(stroke, half, letter.Face, seamX));
    }

    private static bool IsClean(Curve stroke, double half, Face face, double seamX)
    {
        var along = 0.0;
        for (var at = 0.1; at < stroke.Length; at += 0.2)
        {
            var beside = Math.Max(0, Math.Abs(stroke.At(at).X - seamX) - half);
            if (face.Height < Limits.LetterNote * 1.1 && beside < Limits.SeamTextNear * 1.3)
                return false;
            var direction = stroke.Direction(at);
            var isUpright = Math.Abs(direction.X) < 0.45 * Math.Abs(direction.Y);
            var isNarrow = 2 * half < Limits.SeamColumn * 1.1;
            along = isUpright && isNarrow && beside < Limits.SeamColumnNear * 1.2 ? along + 0.2 : 0;
            if (along > 3.2)
                return false;
        }

        return true;
    }
}
