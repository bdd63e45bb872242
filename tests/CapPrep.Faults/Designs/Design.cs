using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Designs;

/// <summary>What is sewn with one thread, from stop to stop.</summary>
/// <param name="Parts">In the order they are sewn.</param>
internal sealed record Block(Yarn Yarn, params IReadOnlyList<Part> Parts)
{
    /// <summary>What a person does at the stop before it; a word of the ticket.</summary>
    public string? Action { get; init; }
}

/// <summary>A design as a digitizer has it, with its order, and the ticket it comes with.</summary>
internal sealed record Design(params IReadOnlyList<Block> Blocks)
{
    public Habits Habits { get; init; } = new();

    public TicketNote Ticket { get; init; } = new();

    /// <summary>Changes the bytes or header of the tape; a fault of the file.</summary>
    public Tapes.FileHabits File { get; init; } = new();

    /// <summary>The ticket leaves the centering to the box, though that is not where its middle lies.</summary>
    public bool SeatsByBox { get; init; }

    /// <summary>The ticket lays the tape's own origin on the seam, whatever the design around it.</summary>
    public bool SeatsByOrigin { get; init; }

    public IEnumerable<Part> Parts => Blocks.SelectMany(block => block.Parts);

    public Design Map(Func<Part, Part> change) => this with
    {
        Blocks = [.. Blocks.Select(block => block with { Parts = [.. block.Parts.Select(change)] })],
    };

    /// <summary>Every place moved.</summary>
    public Design Moved(Func<Vec, Vec> map) => Map(part => Changed.Of(part, map));

    public Design WithTicket(Func<TicketNote, TicketNote> change) => this with { Ticket = change(Ticket) };

    public Design WithHabits(Func<Habits, Habits> change) => this with { Habits = change(Habits) };

    /// <summary>Another part in place of the one of this name.</summary>
    public Design With(string name, Func<Part, Part> change) => Map(part => part.Name == name ? change(part) : part);

    public Rect Box => Parts.Select(part => part.Box).Aggregate((all, box) => all.With(box));
}
