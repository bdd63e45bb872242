using CapPrep.Engine.Checks.OnTicket;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;

namespace CapPrep.Engine.Checks.OnTechnique.Foam;

/// <summary>
/// The stitches that lie over foam, where the limits of flat work say nothing. The ticket says so by its technique
/// (then of all blocks but those it calls flat) or thread by thread; where it says nothing, satin that is sewn like
/// foam work is taken for it, if it is most of the design.
/// </summary>
internal sealed class FoamPieces
{
    // House, mm: columns so wide and so dense are sewn over foam only, and three fifths of the stitches are of them.
    private const double GuessedFromWidth = 3;
    private const double GuessedToWidth = 12.7;
    private const double GuessedToPitch = 0.25;
    private const double GuessedShare = 0.6;

    private readonly bool[] _points;
    private readonly bool[] _pieces;

    private FoamPieces(DesignReading reading, bool[] points, Func<Piece, bool> lies, bool isGuessed)
    {
        _points = points;
        _pieces = [.. reading.Pieces.Select(piece => piece.IsClosed && lies(piece))];
        IsGuessed = isGuessed;
        All = [.. reading.Pieces.Where(Contains)];
    }

    /// <summary>Nobody said that it is foam work.</summary>
    internal bool IsGuessed { get; }

    /// <summary>Satin and fill over foam, in received order.</summary>
    internal IReadOnlyList<Piece> All { get; }

    /// <summary>Its columns, in received order.</summary>
    internal IEnumerable<Piece> Columns => All.Where(piece => piece.Class == StitchClass.Satin);

    /// <summary>The piece lies over foam.</summary>
    internal bool Contains(Piece piece) => _pieces[piece.Index];

    /// <summary>The penetration, counted from 0, belongs to work over foam; also ties and lines between its columns.</summary>
    internal bool ContainsPoint(int point) => _points[point];

    internal static FoamPieces Of(DesignReading reading, StitchSequence stitches, ResolvedTicket ticket)
    {
        var blocks = BlocksOf(ticket, stitches.Blocks);
        if (blocks.Contains(true))
            return new(reading, [.. Enumerable.Range(0, stitches.Count).Select(point => blocks[stitches.Block[point] - 1])], piece => blocks[piece.Block - 1], isGuessed: false);
        var likely = ticket.Technique == Technique.Flat ? Likely(reading, stitches) : [];
        return new(reading, PointsOf(reading, stitches, likely), piece => likely.Contains(piece.Index), isGuessed: likely.Count > 0);
    }

    /// <summary>For each received block: the ticket says that it is sewn over foam.</summary>
    internal static IReadOnlyList<bool> BlocksOf(ResolvedTicket ticket, int blocks)
    {
        var threads = ThreadList.Of(ticket.Received).SelectMany(list => list.Threads).ToLookup(thread => thread.Block, thread => thread.Foam);
        return [.. Enumerable.Range(1, blocks).Select(block =>
            threads[block].Contains(true) || (ticket.Technique == Technique.Foam && !threads[block].Contains(false)))];
    }

    /// <summary>Indices of the pieces; none unless they are most of the design.</summary>
    private static HashSet<int> Likely(DesignReading reading, StitchSequence stitches)
    {
        var likely = reading.Pieces.Where(piece => IsSewnLikeFoam(piece, stitches)).Select(piece => piece.Index).ToHashSet();
        var sewn = reading.Spans.Where(span => span.Role == SpanRole.Visible && IsOf(span, likely)).Sum(span => span.Penetrations);
        return sewn >= GuessedShare * stitches.Count ? likely : [];
    }

    private static bool IsSewnLikeFoam(Piece piece, StitchSequence stitches) =>
        piece.Class == StitchClass.Satin
        && piece.WidthMm is >= GuessedFromWidth and <= GuessedToWidth
        && ColumnRows.Of(piece, stitches).PitchMm() <= GuessedToPitch;

    private static bool[] PointsOf(DesignReading reading, StitchSequence stitches, HashSet<int> pieces)
    {
        var points = new bool[stitches.Count];
        foreach (var span in reading.Spans.Where(span => IsOf(span, pieces)))
            points.AsSpan(span.First, span.Penetrations).Fill(true);
        return points;
    }

    private static bool IsOf(Span span, HashSet<int> pieces) => span.Piece is { } piece && pieces.Contains(piece);
}
