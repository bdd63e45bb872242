using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Letters;

/// <summary>One letter, sewn from one side to the other.</summary>
/// <param name="Sign">Which letter.</param>
/// <param name="Face">How it looks.</param>
/// <param name="Place">From the letter's own frame (foot of its left stroke, line level) to the cap.</param>
/// <param name="Leftward">Entered at its right and left at its left.</param>
internal sealed record Letter(char Sign, Face Face, Func<Vec, Vec> Place, bool Leftward) : Part
{
    /// <summary>Strokes from letter to letter, in the letter's own frame; handwriting only.</summary>
    public Vec? JoinTo { get; init; }

    public override IReadOnlyList<Dot> Dots()
    {
        var strokes = Strokes().Select(stroke => stroke.Mapped(Place)).ToList();
        var (left, right) = (Place(new(-1, -1)), Place(new(Width(Sign, Face) + 1, -1)));
        return Leftward
            ? StrokeSewer.Sew(strokes, Face, right, left)
            : StrokeSewer.Sew(strokes, Face, left, right);
    }

    /// <summary>Width of the middle lines, mm.</summary>
    internal static double Width(char sign, Face face)
    {
        var (left, right) = Alphabet.Reach(sign);
        return (right - left) * face.Height * face.Wide;
    }

    /// <summary>Middle lines in the letter's own frame: half a stroke inside the height, so that the edges keep it.</summary>
    internal IReadOnlyList<Curve> Strokes()
    {
        var (left, _) = Alphabet.Reach(Sign);
        var half = Face.As == SewnAs.Running ? 0 : Face.Stroke / 2;
        Vec Own(Vec unit)
        {
            var y = half + (unit.Y * (Face.Height - (2 * half)));
            var lean = Math.Tan(Face.Lean * Math.PI / 180) * y;
            return new(((unit.X - left) * Face.Height * Face.Wide) + lean, y);
        }

        var strokes = Alphabet.Strokes(Sign).Select(stroke => stroke.Mapped(Own)).ToList();
        if (Face.Serifs)
            strokes.AddRange(Serifs(strokes));
        if (JoinTo is { } to)
            strokes.Add(new(strokes[^1].End, to));
        return strokes;
    }

    /// <summary>Middle lines on the cap.</summary>
    internal IReadOnlyList<Curve> OnCap() => [.. Strokes().Select(stroke => stroke.Mapped(Place))];

    /// <summary>Short bars across the free ends of upright strokes.</summary>
    private IEnumerable<Curve> Serifs(List<Curve> strokes) => strokes
        .Where(stroke => !stroke.IsClosed)
        .SelectMany(stroke => new[] { (stroke.Start, stroke.At(Math.Min(1, stroke.Length / 2))), (stroke.End, stroke.At(Math.Max(stroke.Length - 1, stroke.Length / 2))) })
        .Where(end => Math.Abs(end.Item1.X - end.Item2.X) < 0.45 * Math.Abs(end.Item1.Y - end.Item2.Y))
        .Select(end => end.Item1)
        .Where(end => end.Y < Face.Height * 0.2 || end.Y > Face.Height * 0.8)
        .Where(end => strokes.Count(stroke => stroke.Nearest(end).Distance < 0.2) == 1)
        .Select(end => new Curve(end - new Vec(Face.Stroke * 0.5, 0), end + new Vec(Face.Stroke * 0.5, 0)))
        .ToList();
}
