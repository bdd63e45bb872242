using CapPrep.Engine.Checks;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Briefs;

/// <summary>The order a design should be sewn in, step by step: a text line is one step, everything else element by element.</summary>
internal sealed class WantedOrder(Subject job, SewOrder order)
{
    private readonly IReadOnlyList<Element> _elements = job.Reading.Elements;
    private readonly TextLine?[] _lines = LinesOf(job);

    internal IReadOnlyList<BriefStep> Steps()
    {
        var steps = new List<BriefStep>();
        foreach (var group in Groups())
        {
            var block = _elements[group[0]].Block;
            var before = steps.Count == 0 ? block : steps[^1].Block;
            steps.Add(Step(steps.Count + 1, group, StopBefore(before, block)));
        }

        return steps;
    }

    private static TextLine?[] LinesOf(Subject job)
    {
        var lines = new TextLine?[job.Reading.Elements.Count];
        foreach (var line in job.TextLines)
        {
            foreach (var element in line.Elements)
                lines[element] ??= line;
        }

        return lines;
    }

    /// <summary>Elements that follow each other in one text line and one color.</summary>
    private List<List<int>> Groups()
    {
        var groups = new List<List<int>>();
        foreach (var element in order.Order)
        {
            if (groups.Count > 0 && BelongsTo(groups[^1][^1], element))
                groups[^1].Add(element);
            else
                groups.Add([element]);
        }

        return groups;
    }

    private bool BelongsTo(int last, int next) =>
        _lines[next] is not null && _lines[next] == _lines[last] && _elements[next].Block == _elements[last].Block;

    private BriefStop StopBefore(int before, int block) =>
        before == block ? BriefStop.None
        : ActionBefore(block) == StopAction.None ? BriefStop.Color
        : BriefStop.Deliberate;

    private BriefStep Step(int number, List<int> group, BriefStop stop)
    {
        var first = _elements[group[0]];
        var line = _lines[group[0]];
        var box = group.Select(element => Placement.Of(job.Seated).OnCap(_elements[element].Box)).Aggregate((sum, next) => sum.Union(next));
        return new BriefStep(
            number,
            line is null ? What(first.Kind) : line.IsTagline ? "bottom line" : "text line",
            [.. group.Select(element => element + 1)],
            first.Block,
            box.ToMillimeters(),
            stop,
            stop == BriefStop.Deliberate ? ActionBefore(first.Block) : StopAction.None,
            line is null ? [] : [.. line.Glyphs.Select(Entry)]);
    }

    private StopAction ActionBefore(int block) =>
        job.DeliberateStops.Where(stop => stop.Behind == block - 1).Select(stop => stop.Action).FirstOrDefault();

    private static LetterEntry Entry(Glyph glyph) =>
        glyph.FromMm > 0 ? LetterEntry.Left
        : glyph.ToMm < 0 ? LetterEntry.Right
        : LetterEntry.Either;

    private static string What(ElementKind kind) => kind switch
    {
        ElementKind.Satin => "satin",
        ElementKind.Fill => "fill",
        ElementKind.DenseRunning => "ring lines",
        ElementKind.Pattern => "repeat pattern",
        ElementKind.OpenZigzag => "open zigzag",
        ElementKind.Underlay => "underlay",
        ElementKind.Retraced or ElementKind.Running => "running line",
        _ => "stitches",
    };
}
