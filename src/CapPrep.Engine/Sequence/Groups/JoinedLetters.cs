using CapPrep.Engine.Checks;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>Several letters that are read as one element: how wide it is tells about how many, and in which order.</summary>
internal static class JoinedLetters
{
    // House: two letters from one and a half times the height on; each is nine tenths of the height wide with its gap.
    private const double WidestLetter = 1.5;
    private const double UsualWidth = 0.9;

    /// <summary>Where each begins and ends sideways, tape units on the cap, and about when it is sewn.</summary>
    /// <param name="subject">The design.</param>
    /// <param name="element">Index of the element.</param>
    /// <param name="letter">What is taken for a letter.</param>
    /// <param name="height">Height of the letters, tape units.</param>
    internal static IEnumerable<(int Left, int Right, int First)> Of(Subject subject, int element, RowLetter letter, int height)
    {
        var (sewn, box) = (subject.Reading.Elements[element], letter.Box);
        if (letter.Elements.Count > 1 || box.Width <= WidestLetter * height)
            return [(box.Left, box.Right, sewn.First)];
        var count = (int)Math.Round(box.Width / (UsualWidth * height), MidpointRounding.AwayFromZero);
        return Enumerable.Range(0, count)
            .Select(part => (Left: box.Left + (box.Width * part / count), Right: box.Left + (box.Width * (part + 1) / count)))
            .Select(part => (part.Left, part.Right, Middle(subject, sewn, part.Left, part.Right)));
    }

    /// <summary>The middle one of the needle points between two edges.</summary>
    private static int Middle(Subject subject, Pieces.Element sewn, int left, int right)
    {
        int[] within = [.. Enumerable.Range(sewn.First, sewn.Penetrations).Where(at => subject.Points.At(at).X >= left && subject.Points.At(at).X <= right)];
        return within.Length == 0 ? sewn.First : within[within.Length / 2];
    }
}
