using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;
using CapPrep.FaultCorpus.Tapes;

namespace CapPrep.FaultCorpus;

/// <summary>Consecutive needle points of one part, letter, class and purpose.</summary>
/// <param name="First">Needle point, from 0.</param>
/// <param name="Last">Included.</param>
/// <param name="Element">What moves as a whole when the order changes: a part, as far as its thread is not cut; joined letters are one.</param>
public sealed record TruthSpan(int First, int Last, string Element, int Block, SewnAs As, Purpose Purpose, string? Line, int Glyph);

/// <summary>A text line as drawn.</summary>
/// <param name="Glyphs">Boxes of the letters on the cap, mm, from the viewer's left.</param>
public sealed record TruthLine(string Name, IReadOnlyList<Rect> Glyphs);

/// <summary>A fault that was put into a clean design.</summary>
/// <param name="Rule">Id of the rule that must report it.</param>
public sealed record PlantedFault(string Rule)
{
    /// <summary>Where on the cap it lies, mm; null: it lies in the ticket or in the file.</summary>
    public Rect? Place { get; init; }

    /// <summary>Rules that may speak as well, because the fault is theirs too.</summary>
    public IReadOnlyList<string> Companions { get; init; } = [];

    /// <summary>Lowest severity that counts as found: a rule that only notes is found by a note.</summary>
    public string AtLeast { get; init; } = "warn";

    /// <summary>How far beyond its limit the fault was put, as a share of the limit; null where nothing is measured.</summary>
    public double? Beyond { get; init; }
}

/// <summary>What is known about a tape because it was made here.</summary>
public sealed record Truth
{
    /// <summary>In the order of the tape; every needle point once.</summary>
    public required IReadOnlyList<TruthSpan> Spans { get; init; }

    public required IReadOnlyList<TruthLine> Lines { get; init; }

    public required int Parts { get; init; }

    /// <summary>Box of the needle points on the cap, mm.</summary>
    public required Rect Box { get; init; }

    public PlantedFault? Fault { get; init; }
}

/// <summary>A tape, the ticket it comes with, and the truth about it.</summary>
public sealed record CorpusTape
{
    /// <summary>Family and number: what it can be made again from.</summary>
    public required string Name { get; init; }

    public required string Family { get; init; }

    public required byte[] Bytes { get; init; }

    public required TicketNote Ticket { get; init; }

    public required Truth Truth { get; init; }

    /// <summary>A good design that looks wrong.</summary>
    public bool IsHard { get; init; }

    /// <summary>Needle points as stored; what the bytes were written from.</summary>
    public required IReadOnlyList<Needle> Needles { get; init; }

    internal Habits Habits { get; init; } = new();

    internal FileHabits File { get; init; } = new();
}
