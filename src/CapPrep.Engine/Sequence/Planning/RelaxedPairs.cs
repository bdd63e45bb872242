using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Search;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Lists the pairs of one thread that overlap enough to show, and yet may change places.</summary>
internal static class RelaxedPairs
{
    internal static IReadOnlyList<RelaxedPair> Of(DesignReading reading, Precedence precedence) =>
    [
        .. from one in reading.Elements
           from other in reading.Elements.Skip(one.Index + 1)
           where one.Thread == other.Thread && precedence.IsFree(one.Index, other.Index)
               && Layers.Count(sameThread: true, one.Cover.Shared(other.Cover), Math.Min(one.Cover.Area, other.Cover.Area))
           select new RelaxedPair(one.Index, other.Index),
    ];
}
