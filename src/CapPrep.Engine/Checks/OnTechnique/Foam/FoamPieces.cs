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

    // House, mm: columns before the foam that are spaced like this are flat work.
    private const double FlatFromPitch = 0.33;

    private readonly bool[] _points;
    private readonly bool[] _pieces;

    private readonly Lazy<IReadOnlyList<FoamColumn>> _shaping;

    private FoamPieces(DesignReading reading, StitchSequence stitches, bool[] points, Func<Piece, bool> lies, bool isGuessed)
    {
        _points = points;
        _pieces = [.. reading.Pieces.Select(piece => piece.IsClosed && lies(piece))];
        IsGuessed = isGuessed;
        All = [.. reading.Pieces.Where(Contains)];
        _shaping = new(() => isGuessed ? [] : FoamColumn.Shaping(Columns, stitches), LazyThreadSafetyMode.None);
    }

    /// <summary>Nobody said that it is foam work.</summary>
    internal bool IsGuessed { get; }

    /// <summary>Satin and fill over foam, in received order.</summary>
    internal IReadOnlyList<Piece> All { get; }

    /// <summary>Its columns, in received order.</summary>
    internal IEnumerable<Piece> Columns => All.Where(piece => piece.Class == StitchClass.Satin);

    /// <summary>
    /// Its columns one by one, without those that only close the end of another; none where foam is only guessed.
    /// </summary>
    internal IReadOnlyList<FoamColumn> Shaping => _shaping.Value;

    /// <summary>The piece lies over foam.</summary>
    internal bool Contains(Piece piece) => _pieces[piece.Index];

    /// <summary>The penetration, counted from 0, belongs to work over foam; also ties and lines between its columns.</summary>
    internal bool ContainsPoint(int point) => _points[point];

    internal static FoamPieces Of(DesignReading reading, StitchSequence stitches, ResolvedTicket ticket)
    {
        var blocks = BlocksOf(ticket, stitches.Blocks, FirstBlock(reading, stitches, ticket));
        if (blocks.Contains(true))
            return new(reading, stitches, [.. Enumerable.Range(0, stitches.Count).Select(point => blocks[stitches.Block[point] - 1])], piece => blocks[piece.Block - 1], isGuessed: false);
        var likely = ticket.Technique == Technique.Flat ? Likely(reading, stitches) : [];
        return new(reading, stitches, PointsOf(reading, stitches, likely), piece => likely.Contains(piece.Index), isGuessed: likely.Count > 0);
    }

    /// <summary>For each received block: the ticket says that it is sewn over foam.</summary>
    private static IReadOnlyList<bool> BlocksOf(ResolvedTicket ticket, int blocks, int first)
    {
        var threads = ThreadList.Of(ticket.Received).SelectMany(list => list.Threads).ToLookup(thread => thread.Block, thread => thread.Foam);
        return [.. Enumerable.Range(1, blocks).Select(block =>
            threads[block].Contains(true) || (ticket.Technique == Technique.Foam && block >= first && !threads[block].Contains(false)))];
    }

    /// <summary>The block before which the ticket lays foam, else the first one with a column as dense as over foam, else the first.</summary>
    private static int FirstBlock(DesignReading reading, StitchSequence stitches, ResolvedTicket ticket) => ticket.Technique != Technique.Foam
        ? 1
        : ThreadList.Of(ticket.Received).SelectMany(list => list.Threads).Where(thread => thread.Action == StopAction.LayFoam).Select(thread => (int?)thread.Block).Min()
            ?? reading.Pieces.FirstOrDefault(piece => piece.Class == StitchClass.Satin && ColumnRows.Of(piece, stitches).PitchMm() <= FlatFromPitch)?.Block
            ?? 1;

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
