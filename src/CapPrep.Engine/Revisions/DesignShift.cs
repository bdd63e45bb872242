using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Revisions;

/// <summary>
/// How far the whole design was shifted on its tape: another start point is no change. Elements of the same shape in
/// both vote, each with its stitches.
/// </summary>
internal static class DesignShift
{
    // Beyond so many elements with as many stitches each, letters of one kind say nothing more.
    private const int MostAlike = 40;

    /// <summary>Add it to a point of the earlier design to get the same point of the new one.</summary>
    internal static TapePoint Of(DesignPoints earlier, DesignPoints now)
    {
        var bySize = now.Reading.Elements.ToLookup(element => element.Penetrations);
        var votes = new Dictionary<TapePoint, long>();
        foreach (var element in earlier.Reading.Elements)
        {
            foreach (var other in bySize[element.Penetrations].Take(MostAlike))
            {
                if (earlier.HasShapeAt(element, now, other.First))
                    Vote(votes, now.At(other.First) - earlier.At(element.First), element);
            }
        }

        return votes.Count == 0
            ? now.Box.BottomCenter - earlier.Box.BottomCenter
            : votes.OrderByDescending(vote => vote.Value).ThenBy(vote => vote.Key.Reach).ThenBy(vote => vote.Key.X).ThenBy(vote => vote.Key.Y).First().Key;
    }

    private static void Vote(Dictionary<TapePoint, long> votes, TapePoint shift, Element element) =>
        votes[shift] = votes.GetValueOrDefault(shift) + element.Penetrations;
}
