using CapPrep.Engine.Lettering.Search;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Lettering.Making;

/// <summary>Which stitches are there to be seen.</summary>
internal sealed class Visibility
{
    // Letters whose strokes are seen to this share, percent, are there to be read.
    private const int LeastShare = 70;

    private readonly bool[] _isSeen;

    public Visibility(DesignReading reading)
    {
        _isSeen = new bool[reading.Spans.Count == 0 ? 0 : reading.Spans[^1].Last + 1];
        foreach (var span in reading.Spans.Where(span => span.Role is SpanRole.Visible or SpanRole.TravelOnTop or SpanRole.Tie))
            _isSeen.AsSpan(span.First, span.Penetrations).Fill(true);
    }

    public bool Shows(Candidate line)
    {
        var strokes = line.Limbs.SelectMany(limb => limb.Limb.Stitches).ToList();
        var seen = strokes.Sum(stroke => Enumerable.Range(stroke.First, stroke.Count).Count(i => _isSeen[i]));
        return 100L * seen >= LeastShare * (long)strokes.Sum(stroke => stroke.Count);
    }
}
