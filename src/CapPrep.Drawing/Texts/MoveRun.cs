using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Planning;

namespace CapPrep.Drawing.Texts;

/// <summary>Neighbors in the received order that move for one reason and are neighbors again where they go.</summary>
/// <param name="From">First received place, from 0.</param>
/// <param name="To">First new place, from 0.</param>
/// <param name="Count">How many places each.</param>
/// <param name="Weight">Stitches times places moved.</param>
internal sealed record MoveRun(string Because, int From, int To, int Count, long Weight)
{
    /// <summary>The biggest first.</summary>
    public static IReadOnlyList<MoveRun> Of(IEnumerable<OrderMove> moves, IReadOnlyList<Element> elements) =>
    [
        .. moves
            .GroupBy(move => move.Because)
            .SelectMany(because => Stretches([.. because.OrderBy(move => move.From)]))
            .Select(stretch => Of(stretch, elements))
            .OrderByDescending(run => run.Weight)
            .ThenBy(run => run.From),
    ];

    private static MoveRun Of(IReadOnlyList<OrderMove> stretch, IReadOnlyList<Element> elements) => new(
        stretch[0].Because,
        stretch[0].From,
        stretch.Min(move => move.To),
        stretch.Count,
        stretch.Sum(move => (long)elements[move.Element].Penetrations * Math.Abs(move.To - move.From)));

    /// <summary>As long as both ends stay together, in whatever order the moves arrive.</summary>
    private static IEnumerable<IReadOnlyList<OrderMove>> Stretches(IReadOnlyList<OrderMove> moves)
    {
        for (var (first, next) = (0, 0); first < moves.Count; first = next)
        {
            next = first + 1;
            for (var end = first + 2; end <= moves.Count && moves[end - 1].From == moves[end - 2].From + 1; end++)
            {
                if (IsTogether([.. moves.Skip(first).Take(end - first)]))
                    next = end;
            }

            yield return [.. moves.Skip(first).Take(next - first)];
        }
    }

    private static bool IsTogether(IReadOnlyList<OrderMove> moves) =>
        moves.Max(move => move.To) - moves.Min(move => move.To) == moves.Count - 1;
}
