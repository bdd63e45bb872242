using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>Consecutive penetrations of a stitch sequence, both ends included.</summary>
internal readonly record struct Interval(int First, int Last)
{
    public int Count => Last - First + 1;

    /// <summary>They have a penetration in common.</summary>
    public bool Meets(Interval other) => First <= other.Last && other.First <= Last;

    /// <summary>The strands of a tape: maximal intervals that are connected by thread.</summary>
    public static List<Interval> Strands(StitchSequence stitches)
    {
        var strands = new List<Interval>();
        var first = 0;
        for (var i = 1; i <= stitches.Count; i++)
        {
            if (i < stitches.Count && stitches.Relations[i] == Relation.Thread)
                continue;
            strands.Add(new(first, i - 1));
            first = i;
        }

        return strands;
    }
}
