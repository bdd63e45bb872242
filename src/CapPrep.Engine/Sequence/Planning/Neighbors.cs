using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Search;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>How the thread gets from one element to the next.</summary>
public enum Connection : byte
{
    /// <summary>The first element of the tape.</summary>
    None,

    /// <summary>Another color block begins.</summary>
    Stop,

    /// <summary>The thread is cut.</summary>
    Cut,

    /// <summary>By the received link between the two.</summary>
    KeptLink,

    /// <summary>By one new stitch.</summary>
    NewLink,
}

/// <summary>
/// Says of every two elements of one thread what it takes to sew the second right behind the first. A new stitch
/// between them may be 1 mm long in the open, or 7 mm where what is sewn later hides it (house).
/// </summary>
internal sealed class Neighbors
{
    /// <summary>Longest new stitch in the open, tape units.</summary>
    internal const int VisibleLink = 1 * Tenths.PerMillimeter;

    /// <summary>Longest hidden new stitch, tape units.</summary>
    internal const int HiddenLink = 7 * Tenths.PerMillimeter;

    private const int HiddenPercent = 95;

    // More gaps than a design for a cap ever has; what lies beyond is trimmed.
    private const int MostGaps = 20_000;

    private readonly SewOrderRequest _request;
    private readonly IReadOnlyList<Element> _elements;
    private readonly Precedence _precedence;
    private readonly Adjacency[] _behind;
    private int _gaps;

    private Neighbors(SewOrderRequest request, Precedence precedence)
    {
        (_request, _precedence, _elements) = (request, precedence, request.Reading.Elements);
        _behind = new Adjacency[_elements.Count * _elements.Count];
    }

    /// <summary>Row by row: what it takes to sew the column's element right behind the row's.</summary>
    internal static Adjacency[] Of(SewOrderRequest request, Precedence precedence)
    {
        var neighbors = new Neighbors(request, precedence);
        neighbors.Compare();
        return neighbors._behind;
    }

    /// <summary>How two elements that follow each other in an order are connected.</summary>
    internal static Connection ConnectionOf(PlanningTable table, int first, int second)
    {
        if (table.Blocks[first] != table.Blocks[second])
            return Connection.Stop;
        if (table.Behind[(first * table.Count) + second] != Adjacency.Joined)
            return Connection.Cut;
        return IsLinked(table.Request, first, second) ? Connection.KeptLink : Connection.NewLink;
    }

    private void Compare()
    {
        for (var first = 0; first < _elements.Count; first++)
        {
            for (var second = 0; second < _elements.Count; second++)
            {
                if (first != second && _elements[first].Thread == _elements[second].Thread)
                    _behind[(first * _elements.Count) + second] = Behind(first, second);
            }
        }
    }

    private Adjacency Behind(int first, int second)
    {
        if (second == first + 1)
            return IsLinked(_request, first, second) ? Adjacency.Joined : Adjacency.Trimmed;
        if (_precedence.Orders(second, first))
            return Adjacency.Trimmed;
        if (MayJoin(first, second))
            return Adjacency.Joined;
        return _request.TrimBy switch
        {
            TrimBy.StopOnly => Adjacency.Never,
            TrimBy.Hand when IsSewnOver(first, second) => Adjacency.Never,
            _ => Adjacency.Trimmed,
        };
    }

    /// <summary>No cut and no stop lies between two elements that were sewn one after the other.</summary>
    internal static bool IsLinked(SewOrderRequest request, int first, int second)
    {
        var elements = request.Reading.Elements;
        if (second != first + 1)
            return false;
        for (var i = elements[first].Last + 1; i <= elements[second].First; i++)
        {
            if (request.Stitches.Relations[i] != Relation.Thread)
                return false;
        }

        return true;
    }

    private bool MayJoin(int first, int second)
    {
        var (exit, entry) = (_request.Stitches.At(_elements[first].Last), _request.Stitches.At(_elements[second].First));
        var way = entry - exit;
        var length = ((long)way.X * way.X) + ((long)way.Y * way.Y);
        return length <= HiddenLink * HiddenLink
            && _gaps++ < MostGaps
            && CoverPainter.Of(_request.Stitches.Grid, exit, entry) is var line
            && (length <= VisibleLink * VisibleLink || IsHidden(line, second))
            && !LiesOnOtherThread(line, second);
    }

    /// <summary>Hidden by the element it leads to, or by areas of its thread that can only be sewn after that.</summary>
    private bool IsHidden(Cover line, int second)
    {
        var over = _elements.Where(element => element.Thread == _elements[second].Thread
            && element.Kind is ElementKind.Satin or ElementKind.Fill or ElementKind.DenseRunning
            && (element.Index == second || _precedence.Orders(second, element.Index))).ToArray();
        return CellsUnder(line, over) * 100 >= line.Area * HiddenPercent;
    }

    private bool LiesOnOtherThread(Cover line, int second) => _elements.Any(element =>
        element.Thread != _elements[second].Thread
        && !_precedence.Orders(second, element.Index)
        && element.Cover.Shared(line) > 0);

    /// <summary>Something lies over the thread from one to the other that is not surely sewn before it.</summary>
    private bool IsSewnOver(int first, int second)
    {
        var line = CoverPainter.Of(_request.Stitches.Grid, _request.Stitches.At(_elements[first].Last), _request.Stitches.At(_elements[second].First));
        return _elements.Any(element => element.Index != first && element.Index != second
            && !_precedence.Orders(element.Index, second)
            && element.Cover.Shared(line) > 0);
    }

    private static int CellsUnder(Cover line, Element[] over)
    {
        var count = 0;
        for (var row = line.FirstRow; row < line.FirstRow + line.Rows; row++)
        {
            for (var column = line.FirstColumn; column < line.FirstColumn + (line.Row(row).Length * 64); column++)
            {
                if (line.Contains(column, row) && over.Any(element => element.Cover.Contains(column, row)))
                    count++;
            }
        }

        return count;
    }
}
