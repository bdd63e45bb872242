using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Checks.OnLetters;

/// <summary>A line of letters with what its limits depend on.</summary>
internal sealed class LetterLine
{
    /// <summary>Share of the letters' area that lies on a fill when the line does; house.</summary>
    private const double OnFillShare = 0.8;

    private readonly Lazy<bool> _liesOnFill;

    internal LetterLine(Subject subject, TextLine line)
    {
        Line = line;
        var threads = ThreadsOf(subject.Ticket.Received, subject.Stitches.Block[line.Glyphs[0].Strokes[0].First]);
        WeightWt = threads.Select(thread => thread?.WeightWt ?? subject.Ticket.ThreadWeightWt).Min();
        IsMetallic = threads.Any(thread => thread?.Kind == ThreadKind.Metallic);
        _liesOnFill = new(() => IsOnFill(subject, line), LazyThreadSafetyMode.None);
    }

    internal TextLine Line { get; }

    /// <summary>Weight number of its thread; the coarsest, where lots of caps are sewn with different ones.</summary>
    internal int WeightWt { get; }

    /// <summary>Its thread is metallic, in one lot at least.</summary>
    internal bool IsMetallic { get; }

    /// <summary>Nearly all of it lies on fills that are sewn before it.</summary>
    internal bool LiesOnFill => _liesOnFill.Value;

    internal bool IsRunning => Line.Make == LetterMake.Running;

    /// <summary>The worst that may be said of it: a line found with doubt never holds a job.</summary>
    internal Severity Worst => Line.Sure ? Severity.Hold : Severity.Warn;

    internal static IEnumerable<LetterLine> Of(Subject subject) => subject.TextLines.Select(line => new LetterLine(subject, line));

    /// <summary>The thread of a block in every list of the ticket; null where none is named.</summary>
    private static IReadOnlyList<TicketThread?> ThreadsOf(Ticket ticket, int block) =>
        ThreadList.Of(ticket) is { Count: > 0 } lists
            ? [.. lists.Select(list => list.Threads.FirstOrDefault(thread => thread.Block == block))]
            : [null];

    private static bool IsOnFill(Subject subject, TextLine line)
    {
        var pieces = PiecesOf(subject.Reading, line);
        var area = pieces.Sum(piece => piece.Blanket.Area);
        var onFill = pieces.Sum(piece => piece.Blanket.SharedWithAny(
            subject.Ground[piece].Below.Where(below => below.Class == StitchClass.Fill).Select(below => below.Blanket)));
        return area > 0 && onFill >= OnFillShare * area;
    }

    private static Piece[] PiecesOf(DesignReading reading, TextLine line)
    {
        var elements = line.Elements.ToHashSet();
        StitchRange[] strokes = [.. line.Glyphs.SelectMany(glyph => glyph.Strokes)];
        return [.. reading.Pieces.Where(piece => elements.Contains(piece.Element)
            && strokes.Any(stroke => stroke.First <= piece.Last && stroke.Last >= piece.First))];
    }
}
