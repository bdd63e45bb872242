using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Sequence.Groups;

/// <summary>
/// Fills that are read as several elements: parts round an opening, and the lines that lie under them or lead from part
/// to part. Which of them comes first is decided by how the fill is made, not by the order of sewing.
/// </summary>
internal sealed class SewnAreas
{
    // Lines of a fill reach no farther than 1 mm out of its box, and its parts lie within 2 degrees (house).
    private const int Room = 1 * Tenths.PerMillimeter;
    private const double SameDegrees = 2;

    // A stroke is up to 3 mm thick, lies flat, and is within 5 mm of the word that it underlines (house).
    private const int ThinMm = 3;
    private const int FlatRatio = 4;
    private const int NearWord = 5 * Tenths.PerMillimeter;

    private readonly int[] _area;
    private readonly bool[] _serves;
    private readonly ILookup<int, int> _words;

    private SewnAreas(IReadOnlyList<Element> elements)
    {
        _area = [.. Enumerable.Range(0, elements.Count)];
        _serves = new bool[elements.Count];
        _words = Underlined(elements).ToLookup(pair => pair.Stroke, pair => pair.Word);
        foreach (var parts in Fills(elements))
        {
            var room = parts.Select(part => part.Box).Aggregate((sum, next) => sum.Union(next)).Grown(Room);
            foreach (var line in LinesOf(parts, elements).Where(line => room.Union(line.Box) == room))
            {
                _area[line.Index] = parts[0].Index;
                _serves[line.Index] = true;
            }

            foreach (var part in parts)
                _area[part.Index] = parts[0].Index;
        }
    }

    internal static SewnAreas Of(IReadOnlyList<Element> elements) => new(elements);

    /// <summary>The two are one fill, a fill and its lines, or a word and the stroke under it.</summary>
    internal bool AreOne(int first, int second) =>
        _area[first] == _area[second] || _words[first].Contains(second) || _words[second].Contains(first);

    /// <summary>It is a stroke that belongs to a word.</summary>
    internal bool IsUnderline(int element) => _words.Contains(element);

    /// <summary>It only carries or leads to a fill.</summary>
    internal bool Serves(int element) => _serves[element];

    /// <summary>The elements that are one with any of these, themselves included.</summary>
    internal IEnumerable<int> All(IEnumerable<int> elements)
    {
        var areas = elements.Select(element => _area[element]).ToHashSet();
        return Enumerable.Range(0, _area.Length).Where(element => areas.Contains(_area[element]));
    }

    /// <summary>Thin flat strokes and what is sewn in the same color close to them.</summary>
    private static IEnumerable<(int Stroke, int Word)> Underlined(IReadOnlyList<Element> elements) =>
        from stroke in elements
        where stroke.Kind == ElementKind.Satin
            && FlatRatio * stroke.Box.Height <= stroke.Box.Width
            && stroke.Cover.SquareMillimeters * Tenths.PerMillimeter <= ThinMm * stroke.Box.Width
        let near = stroke.Box.Grown(NearWord)
        from word in elements
        where word.Index != stroke.Index && word.Block == stroke.Block && word.Kind == ElementKind.Satin
            && word.Box.Height > stroke.Box.Height && word.Box.Meets(near)
        select (stroke.Index, word.Index);

    /// <summary>The parts of every fill, in sewing order, lines left out.</summary>
    private static IEnumerable<List<Element>> Fills(IReadOnlyList<Element> elements)
    {
        var fills = new List<List<Element>>();
        foreach (var element in elements.Where(element => !IsLine(element)))
        {
            var met = fills.Where(parts => parts[0].Block == element.Block && parts.Any(part => Continues(part, element))).ToList();
            fills.RemoveAll(met.Contains);
            fills.Add([.. met.SelectMany(parts => parts), element]);
        }

        return fills.Where(parts => parts.Any(part => part.Kind == ElementKind.Fill)).Select(parts => parts.OrderBy(part => part.Index).ToList());
    }

    /// <summary>Its rows lie like those of the other and go on where those end.</summary>
    private static bool Continues(Element part, Element next) =>
        (part.Kind == ElementKind.Fill || next.Kind == ElementKind.Fill)
        && part.Block == next.Block
        && part.Kind is ElementKind.Fill or ElementKind.Satin && next.Kind is ElementKind.Fill or ElementKind.Satin
        && part.Axis.IsDirected && next.Axis.IsDirected
        && Apart(part.Axis.Degrees, next.Axis.Degrees) <= SameDegrees
        && part.Box.Grown(Room).Meets(next.Box) && Near(part.Cover).Shared(next.Cover) > 0;

    /// <summary>All within 1 mm: a row that another part or a line took may lie between.</summary>
    private static Cover Near(Cover cover) =>
        Enumerable.Range(0, Cover.CellsPerMillimeter).Aggregate(cover, (wide, _) => wide.Grown());

    private static double Apart(double one, double other) =>
        Math.Min(Math.Abs(one - other), 180 - Math.Abs(one - other));

    /// <summary>Lines of the same color between the parts, and those that no other area parts from them.</summary>
    private static IEnumerable<Element> LinesOf(List<Element> parts, IReadOnlyList<Element> elements)
    {
        var block = parts[0].Block;
        bool IsOwn(Element element) => IsLine(element) && element.Block == block;
        return elements.Take(parts[0].Index).Reverse().TakeWhile(IsOwn)
            .Concat(elements.Skip(parts[0].Index).Take(parts[^1].Index - parts[0].Index).Where(IsOwn))
            .Concat(elements.Skip(parts[^1].Index + 1).TakeWhile(IsOwn));
    }

    private static bool IsLine(Element element) =>
        element.Kind is ElementKind.Running or ElementKind.DenseRunning or ElementKind.Retraced or ElementKind.Underlay;
}
