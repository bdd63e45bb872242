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
    /// <summary>Right half outward, then left half outward.</summary>
    public IEnumerable<int> FromCenter() =>
        Enumerable.Range(Words.Length / 2, Words.Length - (Words.Length / 2)).Concat(Enumerable.Range(0, Words.Length / 2).Reverse());

    public IEnumerable<int> FromLeft() => Enumerable.Range(0, Words.Length);

    /// <summary>Sews the letters in an order, each tied in and off.</summary>
    public void Sew(Draft draft, IEnumerable<int> order)
    {
        var feet = Feet();
        foreach (var i in order.Where(i => Words[i] != ' '))
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
