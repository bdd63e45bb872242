using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>Letters over foam (fact row L46: shapes of 5.1 to 12.7 mm).</summary>
internal sealed record FoamFace(double Height, double Stroke)
{
    public double Pitch { get; init; } = 0.2;

    public double Gap { get; init; } = 3;
}

/// <summary>Letters of straight columns whose ends are closed by stitches across, so that no foam shows.</summary>
internal static class FoamWork
{
    private const double CapDepth = 2.4;

    /// <summary>Sewn from the middle outward; the middle gap stands over the foot.</summary>
    internal static IReadOnlyList<Part> Letters(string text, FoamFace foam, Vec foot)
    {
        var face = new Face { Height = foam.Height, Stroke = foam.Stroke, Gap = foam.Gap };
        var word = new Word("foam", text, face, new(foot)) { GapOnFoot = true };
        return [.. word.Parts().Cast<Letter>().SelectMany(letter => Columns(letter, foam))];
    }

    /// <summary>Short lines where the outermost letters will hide them: between them the foam is laid.</summary>
    internal static IReadOnlyList<Part> Marks(IReadOnlyList<Part> letters)
    {
        var boxes = letters.OfType<SatinColumn>().Where(column => !column.Name.Contains("cap", StringComparison.Ordinal)).Select(column => column.Box).ToList();
        return [Mark("mark left", boxes.MinBy(box => box.Left)), Mark("mark right", boxes.MaxBy(box => box.Right))];
    }

    private static RunningLine Mark(string name, Rect box)
    {
        var reach = Math.Max(box.Width, box.Height) / 2 - 2;
        var along = box.Width > box.Height ? new Vec(reach, 0) : new Vec(0, reach);
        return new(new(box.Center - along, box.Center + along)) { Name = name, Reach = Reach.Trim, Passes = 2 };
    }

    private static IEnumerable<Part> Columns(Letter letter, FoamFace foam)
    {
        var strokes = letter.OnCap();
        var nodes = new Nodes(strokes, 0.04 * foam.Height);
        for (var k = 0; k < strokes.Count; k++)
        {
            foreach (var cap in Caps(letter, strokes, nodes, k, foam))
                yield return cap;
            yield return Column($"{letter.Name} {k}", letter, Whole(strokes[k], nodes, k, foam.Stroke / 2), foam.Stroke, foam.Pitch);
        }
    }

    private static IEnumerable<Part> Caps(Letter letter, IReadOnlyList<Curve> strokes, Nodes nodes, int k, FoamFace foam)
    {
        var whole = Whole(strokes[k], nodes, k, foam.Stroke / 2);
        foreach (var atStart in new[] { true, false })
        {
            if (nodes.EndsInside(k, atStart))
                continue;
            var middle = whole.At(atStart ? (CapDepth / 2) - 0.2 : whole.Length - (CapDepth / 2) + 0.2);
            var across = whole.Direction(whole.Length / 2).Left * (foam.Stroke / 2);
            yield return Column($"{letter.Name} {k} cap {(atStart ? 0 : 1)}", letter, new(middle - across, middle + across), CapDepth, foam.Pitch);
        }
    }

    private static SatinColumn Column(string name, Letter letter, Curve path, double width, double pitch) => new(path, width)
    {
        Name = name,
        Line = letter.Line,
        Glyph = letter.Glyph,
        Pitch = pitch,
        Under = Under.None,
        Reach = Reach.Trim,
    };

    private static Curve Whole(Curve stroke, Nodes nodes, int k, double half)
    {
        var ahead = stroke.Direction(stroke.Length / 2) * half;
        return new(
            nodes.EndsInside(k, true) ? stroke.Start : stroke.Start - ahead,
            nodes.EndsInside(k, false) ? stroke.End : stroke.End + ahead);
    }
}
