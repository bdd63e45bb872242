using CapPrep.Engine.Checks;
using CapPrep.Engine.Checks.OnTechnique.Applique;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Production;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>A stop at which a person lays, places or cuts something.</summary>
/// <param name="Behind">Received block, from 1, behind which it lies.</param>
/// <param name="Action">What the person does, as far as ticket or stitches say.</param>
internal readonly record struct DeliberateStop(int Behind, StopAction Action);

/// <summary>
/// Finds such stops: marked in the ticket, between blocks of one thread, before the first block over foam, or between
/// the parts of an applique.
/// </summary>
internal static class DeliberateStops
{
    /// <summary>In received order.</summary>
    internal static IReadOnlyList<DeliberateStop> Of(Subject subject)
    {
        var threads = NeedlePlan.ThreadsOf(subject.Ticket.Received);
        var numbers = ThreadNumbers.Of(threads, subject.Stitches.Blocks);
        var foam = FoamStop(subject, threads);
        var shapes = ByShape(subject);
        return [.. Enumerable.Range(1, Math.Max(0, subject.Stitches.Blocks - 1))
            .Select(block => new DeliberateStop(block, ActionBehind(block)))
            .Where(stop => stop.Action != StopAction.None)];

        StopAction ActionBehind(int block) => Marked(threads, block)
            ?? (foam == block ? StopAction.LayFoam
                : shapes.TryGetValue(block, out var action) ? action
                : numbers is not null && numbers[block - 1] == numbers[block] ? StopAction.Pause
                : StopAction.None);
    }

    private static StopAction? Marked(IReadOnlyList<TicketThread> threads, int block) => threads
        .Where(thread => thread.Block == block + 1 && thread.Action is not (null or StopAction.None))
        .Select(thread => thread.Action)
        .FirstOrDefault();

    /// <summary>Where foam is laid unless the ticket says where; null when it lies there from the start or nowhere.</summary>
    private static int? FoamStop(Subject subject, IReadOnlyList<TicketThread> threads)
    {
        if (subject.Foam.IsGuessed || threads.Any(thread => thread.Action == StopAction.LayFoam))
            return null;
        return subject.Foam.Columns.Select(piece => piece.Block - 1).FirstOrDefault() is > 0 and var block ? block : null;
    }

    /// <summary>Actions by the received block behind which they fall.</summary>
    private static Dictionary<int, StopAction> ByShape(Subject subject)
    {
        var actions = new Dictionary<int, StopAction>();
        foreach (var shape in subject.AppliqueShapes.Where(shape => shape.HasStop && IsLastBeforeStop(subject.Reading, shape.Placement)))
        {
            var isPatch = subject.Ticket.Technique == Technique.Patch;
            if (shape.Hold is { } hold ? hold.Block == shape.Placement.Block + 1 && IsFirstBehindStop(subject.Reading, hold) : isPatch)
                actions.TryAdd(shape.Placement.Block, StopAction.PlacePatch);
            if (shape is { Hold: { } line, Cover: [{ } cover, ..] } && cover.Block == line.Block + 1)
                actions.TryAdd(line.Block, StopAction.TrimFabric);
        }

        return actions;
    }

    private static bool IsLastBeforeStop(DesignReading reading, LineTurn line) =>
        !reading.Pieces.Any(piece => piece.Block == line.Block && piece.First > line.Interval.Last && IsDesign(piece));

    private static bool IsFirstBehindStop(DesignReading reading, LineTurn line) =>
        !reading.Pieces.Any(piece => piece.Block == line.Block && piece.First < line.Interval.First && IsDesign(piece));

    private static bool IsDesign(Piece piece) => piece.Class == StitchClass.Fill || LineTurns.IsCover(piece);
}
