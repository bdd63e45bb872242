using System.Globalization;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Approvals;

/// <summary>
/// A cap sewn from these stitches was approved for this cap style, location and technique. Approved work is never
/// changed: it is another product otherwise.
/// </summary>
public sealed record Approval
{
    /// <summary>Id of the decision.</summary>
    public required string Decision { get; init; }

    public required string By { get; init; }

    public required DateTimeOffset At { get; init; }

    public required string OrderNumber { get; init; }

    /// <summary>Null: the received order is the approved one.</summary>
    public ApprovedTape? Sewn { get; init; }

    /// <summary>In a few words, for people.</summary>
    public string Note => string.Create(CultureInfo.InvariantCulture, $"approved on {At.UtcDateTime:yyyy-MM-dd}, order {OrderNumber}");

    /// <summary>
    /// The approval that a request follows: not one of another order where the ticket itself asks for the received one.
    /// </summary>
    internal static Approval? FollowedBy(PrepareRequest request) =>
        request.Approval is { Sewn: not null } && request.Ticket.SewOrderMode == SewOrderMode.AsReceived ? null : request.Approval;
}

/// <summary>The tape that the approved sample was sewn from, where its order is not the received one.</summary>
/// <param name="Tape">As it was written then.</param>
/// <param name="IsTurned">It lies the other way round than the cap.</param>
/// <param name="Start">Where it starts, in units of the received tape.</param>
/// <param name="Order">Its elements by their numbers in the received tape, from 1.</param>
/// <param name="Blocks">The received color block, from 1, that each of its blocks sews.</param>
public sealed record ApprovedTape(Tape Tape, bool IsTurned, TapePoint Start, IReadOnlyList<int> Order, IReadOnlyList<int> Blocks)
{
    /// <summary>The order as indices of elements; null where the design is read into other elements now.</summary>
    internal IReadOnlyList<int>? OrderOf(int elements) =>
        Order.Count == elements && Order.Order().SequenceEqual(Enumerable.Range(1, elements)) ? [.. Order.Select(number => number - 1)] : null;

    /// <summary>
    /// Step of the tape, from 0, in which every element is sewn, by index of the element: the next one begins at another
    /// thread, or where its own received block begins. Null where the design is read into other elements now.
    /// </summary>
    internal IReadOnlyList<int>? BlocksOf(IReadOnlyList<Element> elements)
    {
        if (OrderOf(elements.Count) is not { } order)
            return null;
        var (blocks, step) = (new int[elements.Count], 0);
        for (var at = 0; at < order.Count; at++)
        {
            if (at > 0 && step + 1 < Blocks.Count && BeginsStep(elements[order[at]], elements[order[at - 1]], step + 1))
                step++;
            blocks[order[at]] = step;
        }

        return blocks;
    }

    private bool BeginsStep(Element element, Element before, int step) =>
        element.Thread != before.Thread || (element.Block == Blocks[step] && element.Block != Blocks[step - 1]);
}
