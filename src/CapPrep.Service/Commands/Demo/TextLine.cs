using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Commands.Demo;

/// <summary>A straight line of capitals on y = 0, centered on the seam.</summary>
/// <param name="Words">Letters and blanks.</param>
/// <param name="Height">Height of a letter, tape units.</param>
/// <param name="Stroke">Width of its columns, tape units.</param>
/// <param name="Gap">Between letters, tape units.</param>
internal sealed record TextLine(string Words, int Height, int Stroke, int Gap)
{
    /// <summary>From the letter left of the seam, or on it, to the right end; back, and on to the left end.</summary>
    public IEnumerable<int> FromCenter()
    {
        var letters = FromLeft().ToArray();
        var first = (letters.Length - 1) / 2;
        return letters[first..].Concat(letters[..first].Reverse());
    }

    public IEnumerable<int> FromLeft() => Enumerable.Range(0, Words.Length).Where(i => Words[i] != ' ');

    /// <summary>Sews letters by their places in the words, each tied in and off.</summary>
    public void Sew(Draft draft, IEnumerable<int> order)
    {
        var feet = Feet();
        foreach (var i in order)
            StrokeLetters.Sew(draft, Words[i], feet[i], Height, Stroke);
    }

    /// <summary>Lower left corners of the letters.</summary>
    private TapePoint[] Feet()
    {
        var widths = Words.Select(letter => letter == ' ' ? Height / 3 : StrokeLetters.WidthOf(letter, Height, Stroke)).ToArray();
        var left = -(widths.Sum() + (Gap * (Words.Length - 1))) / 2;
        return [.. widths.Select((_, i) => new TapePoint(left + widths.Take(i).Sum() + (i * Gap), 0))];
    }
}
