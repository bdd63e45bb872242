using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Checks.OnStitches.Ends;

/// <summary>
/// The untrimmed ways from one thing to the next: moves with the needle up, and single stitches between areas. Stitches
/// of a line that is meant to be seen are no ways, nor are rows of an area.
/// </summary>
internal sealed class LooseMoves
{
    // A line of more penetrations is meant to be seen.
    private const int FewPenetrations = 2;

    // A row is at most so many times as long as its neighbor.
    private const int RowRatio = 2;

    private readonly StitchSequence _stitches;
    private readonly IReadOnlyList<Piece> _pieces;
    private readonly SpanMap _spans;

    internal LooseMoves(Subject subject) =>
        (_stitches, _pieces, _spans) = (subject.Stitches, subject.Reading.Pieces, SpanMap.Of(subject));

    /// <summary>Penetrations, counted from 0, that end a way longer than so much.</summary>
    internal IEnumerable<int> LongerThan(double mm) => Enumerable.Range(1, Math.Max(0, _stitches.Count - 1)).Where(point =>
        _stitches.Relations[point] == Relation.Thread && _spans.StepMm(point) > mm && (IsFloat(point) || IsStitchBetween(point)));

    /// <summary>What of a way lies open in the end: neither under later cover nor within the areas that it joins, mm.</summary>
    internal double OpenMm(int point)
    {
        var way = new Interval(point - 1, point);
        var (thread, box) = (_stitches.ThreadOf(way), _stitches.BoxOf(way));
        var hiding = _pieces.Where(piece => piece.IsClosed && Cover.CanShare(piece.Box, box) && (piece.First >= point || Joins(piece, point)));
        return _spans.StepMm(point) * (thread.Area - thread.SharedWithAny(hiding.Select(piece => piece.Blanket))) / thread.Area;
    }

    private bool Joins(Piece piece, int point) => _spans.At(point - 1).Piece == piece.Index || _spans.At(point).Piece == piece.Index;

    /// <summary>The needle was up, but not within the rows of an area: those may be longer than one record moves.</summary>
    private bool IsFloat(int point) =>
        _stitches.Jumps[point] > 0 && (_spans.At(point - 1) != _spans.At(point) || !IsArea(_spans.At(point)));

    private bool IsStitchBetween(int point)
    {
        var (from, to) = (_spans.At(point - 1), _spans.At(point));
        return _stitches.Jumps[point] == 0
            && from != to && (from.Piece is null || from.Piece != to.Piece)
            && !IsLine(from) && !IsLine(to)
            && !IsRow(point, point - 1) && !IsRow(point, point + 1);
    }

    /// <summary>Sewn back against a neighboring stitch and not much longer.</summary>
    private bool IsRow(int point, int neighbor)
    {
        if (!_spans.IsStep(neighbor))
            return false;
        var (step, other) = (Step(point), Step(neighbor));
        return Fine.Dot(step, other) < 0 && Fine.Length(step) <= RowRatio * Fine.Length(other);
    }

    private TapePoint Step(int point) => _stitches.At(point) - _stitches.At(point - 1);

    private static bool IsArea(Span span) => span.Class is StitchClass.Satin or StitchClass.Fill;

    private static bool IsLine(Span span) => !IsArea(span) && span.Role == SpanRole.Visible && span.Penetrations > FewPenetrations;
}
