using CapPrep.Engine.Measures;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>A letter of a row, or several that are read as one.</summary>
/// <param name="Elements">Indices, ascending.</param>
/// <param name="Box">On the cap, tape units.</param>
internal sealed record RowLetter(IReadOnlyList<int> Elements, Box Box);

/// <summary>Elements of one thread that stand side by side like the letters of a line.</summary>
/// <param name="Thread">Number of the thread.</param>
/// <param name="Letters">From the viewer's left to right.</param>
/// <param name="Height">Of most letters, tape units.</param>
internal sealed record LetterRow(int Thread, IReadOnlyList<RowLetter> Letters, int Height)
{
    public Box Box => Letters.Select(letter => letter.Box).Aggregate((sum, next) => sum.Union(next));

    public IEnumerable<int> Elements => Letters.SelectMany(letter => letter.Elements);
}
