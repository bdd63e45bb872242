using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Cost;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>
/// Finds rows of letters by their boxes alone: of one thread, on one foot, equally tall, close together and open inside.
/// That is enough to know that their order is that of a line, even where the letters themselves are not told apart.
/// </summary>
internal sealed class LetterRows
{
    // House: letters of 3.5 to 16 mm, at least four, equal in height to a fifth, on one foot to an eighth of it.
    private const int Lowest = 35;
    private const int Highest = 160;
    private const int FewestLetters = 4;
    private const double HeightShare = 0.2;
    private const double FootShare = 0.125;

    // House: bare cloth beside a letter is at most its height, mostly at most two fifths of it.
    private const double WidestGap = 1;
    private const double UsualGap = 0.4;

    // House: letters cover less than 70 % of their boxes, and most are no wider than one and a half times their height.
    private const double MostCovered = 0.7;
    private const double UsualWidth = 1.5;

    // House: letters are columns or lines; areas are at most a third of them.
    private const double MostFilled = 0.34;

    // House: what shares half of the narrower's width is one letter.
    private const double OneLetterShare = 0.5;

    private readonly IReadOnlyList<Element> _elements;
    private readonly Box[] _boxes;
    private readonly HashSet<int> _taken = [];

    private LetterRows(Subject subject)
    {
        var placement = Placement.Of(subject.Seated);
        _elements = subject.Reading.Elements;
        _boxes = [.. _elements.Select(element => placement.OnCap(element.Box))];
    }

    /// <summary>From the lowest up; no element stands in two.</summary>
    internal static IReadOnlyList<LetterRow> Of(Subject subject) =>
        [.. new LetterRows(subject).Find().OrderBy(row => row.Box.Bottom).ThenBy(row => row.Box.Left)];

    private IEnumerable<LetterRow> Find()
    {
        foreach (var seed in _elements.Where(element => IsTall(element.Index)).OrderByDescending(element => _boxes[element.Index].Height).ThenBy(element => element.Index))
        {
            if (_taken.Contains(seed.Index) || RowOf(seed) is not { } row)
                continue;
            _taken.UnionWith(row.Elements);
            yield return row;
        }
    }

    private LetterRow? RowOf(Element seed)
    {
        var (height, foot) = (_boxes[seed.Index].Height, _boxes[seed.Index].Bottom);
        var band = _boxes[seed.Index].Grown((int)(FootShare * height));
        int[] near =
        [
            .. _elements.Where(element => element.Thread == seed.Thread && !_taken.Contains(element.Index))
                .Select(element => element.Index)
                .Where(item => _boxes[item].Bottom >= band.Bottom && _boxes[item].Top <= band.Top),
        ];
        var letters = Around(seed.Index, Letters(near), height);
        return IsRow(letters, foot, height) ? new(seed.Thread, letters, height) : null;
    }

    private List<RowLetter> Letters(IEnumerable<int> items)
    {
        var letters = new List<RowLetter>();
        foreach (var item in items.OrderBy(item => _boxes[item].Left).ThenBy(item => item))
        {
            if (letters.Count > 0 && AreOne(letters[^1].Box, _boxes[item]))
                letters[^1] = new([.. letters[^1].Elements.Append(item).Order()], letters[^1].Box.Union(_boxes[item]));
            else
                letters.Add(new([item], _boxes[item]));
        }

        return letters;
    }

    private static bool AreOne(Box letter, Box next) =>
        Math.Min(letter.Right, next.Right) - next.Left >= OneLetterShare * Math.Min(letter.Width, next.Width);

    /// <summary>The letters that hang together with one of them.</summary>
    private static RowLetter[] Around(int seed, List<RowLetter> letters, int height)
    {
        var (first, last) = (letters.FindIndex(letter => letter.Elements.Contains(seed)), 0);
        for (last = first; last + 1 < letters.Count && Gap(letters[last], letters[last + 1]) <= WidestGap * height;)
            last++;
        for (; first > 0 && Gap(letters[first - 1], letters[first]) <= WidestGap * height;)
            first--;
        return [.. letters.Skip(first).Take(last - first + 1)];
    }

    private bool IsRow(RowLetter[] letters, int foot, int height)
    {
        RowLetter[] tall = [.. letters.Where(letter => Math.Abs(letter.Box.Height - height) <= HeightShare * height && Math.Abs(letter.Box.Bottom - foot) <= FootShare * height)];
        var areRunning = 2 * tall.Count(IsRunning) > tall.Length;
        var count = areRunning ? tall.Sum(letter => Math.Max(1, (letter.Box.Width + (height / 2)) / height)) : tall.Length;
        return count >= FewestLetters
            && tall.Length >= 2
            && 4 * tall.Length >= 3 * letters.Length
            && Median(letters.Zip(letters.Skip(1), Gap)) <= UsualGap * height
            && (areRunning || Median(tall.Select(letter => letter.Box.Width)) <= UsualWidth * height)
            && tall.Sum(CoveredOf) < MostCovered * tall.Sum(letter => (double)letter.Box.Width * letter.Box.Height)
            && tall.SelectMany(letter => letter.Elements).Where(IsArea).Sum(CoveredOf) <= MostFilled * tall.Sum(CoveredOf);
    }

    /// <summary>Letters of single lines are often sewn as one.</summary>
    private bool IsRunning(RowLetter letter) =>
        letter.Elements.All(item => _elements[item].Kind is ElementKind.Running or ElementKind.Retraced);

    private bool IsArea(int item) => _elements[item].Kind == ElementKind.Fill;

    /// <summary>Square tape units.</summary>
    private double CoveredOf(RowLetter letter) =>
        letter.Elements.Sum(CoveredOf);

    private double CoveredOf(int item) =>
        _elements[item].Cover.SquareMillimeters * Tenths.PerMillimeter * Tenths.PerMillimeter;

    private static int Gap(RowLetter left, RowLetter right) => right.Box.Left - left.Box.Right;

    private static int Median(IEnumerable<int> values)
    {
        int[] sorted = [.. values.Order()];
        return sorted[(sorted.Length - 1) / 2];
    }

    private bool IsTall(int item) =>
        _elements[item].Kind is ElementKind.Satin or ElementKind.Running or ElementKind.Retraced
        && _boxes[item].Height is >= Lowest and <= Highest;
}
