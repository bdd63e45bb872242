using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>Sews letters one by one.</summary>
internal sealed class LetterNeedle(Lettering line, Draft draft, TextWay way)
{
    private const int TravelStitch = 25;

    // No underlay in strokes that would not hide it, tape units.
    private const int NarrowStroke = 8;

    public void Sew(LetterPlace letter, bool isFirst)
    {
        for (var stroke = 0; stroke < letter.Strokes.Count; stroke++)
        {
            var next = letter.Strokes[stroke];
            TapePoint[] points = [.. Points(stroke > 0 && IsNearer(next) ? next.Backward() : next)];
            Reach(points, isNewLetter: stroke == 0, isFirst);
            draft.Stitches(points);
        }

        if (line.Join == LetterJoin.Trim)
            draft.Tie(draft.Moves.Last(move => move.To != draft.At).To);
    }

    private void Reach(TapePoint[] points, bool isNewLetter, bool isFirst)
    {
        if (isNewLetter && (isFirst || line.Join == LetterJoin.Trim))
        {
            if (draft.Moves is [] or [.., { Kind: RecordKind.ColorStop }])
                draft.Move(points[0]);
            else
                draft.Trim(points[0]);
            draft.Stitch(points[0]).Tie(points[1]);
        }
        else
        {
            draft.Run(TravelStitch, draft.At, points[0]);
        }
    }

    /// <summary>From the needle it is nearer to the stroke's end than to its beginning.</summary>
    private bool IsNearer(PenStroke stroke)
    {
        var (first, last) = stroke.Ends(way);
        return (last - draft.At).Reach < (first - draft.At).Reach;
    }

    private IEnumerable<TapePoint> Points(PenStroke stroke) => line.Work == LetterWork.Running
        ? stroke.Run(way)
        : (line.HasUnderlay && line.StrokeWidth >= NarrowStroke ? stroke.Underlay(way) : [])
            .Concat(stroke.Satin(way, line.Pitch, line.Work == LetterWork.Split));
}
