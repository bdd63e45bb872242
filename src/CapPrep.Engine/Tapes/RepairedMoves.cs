using CapPrep.Engine.Measures;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tapes;

/// <summary>The moves of a received tape in repaired form, still in the received tape's own frame.</summary>
internal sealed class RepairedMoves
{
    private readonly Tape _received;
    private readonly StitchSequence _stitches;
    private readonly List<TapeMove> _moves = [];
    private readonly TrimMoves? _trims;
    private readonly int _maxMove;

    private RepairedMoves(Tape received, StitchSequence stitches, RepairSettings settings)
    {
        _received = received;
        _stitches = stitches;
        _maxMove = settings.MaxMove;
        if (settings.TrimBy == TrimBy.Jumps)
            _trims = new(settings.TrimJumps, settings.TrimPattern, settings.MaxMove, stitches.Extents().Center.X);
    }

    public IReadOnlyList<TapeMove> Moves => _moves;

    /// <summary>At least one cut is written with other jump records than it was received with.</summary>
    public bool TrimsChanged { get; private set; }

    public static RepairedMoves Of(Tape received, StitchSequence stitches, RepairSettings settings)
    {
        var repaired = new RepairedMoves(received, stitches, settings);
        repaired.Lead(settings.StartAndEnd);
        for (var i = 1; i < stitches.Count; i++)
            repaired.Connect(i);
        repaired.Trail(settings.StartAndEnd);
        return repaired;
    }

    private void Lead(TapePoint? start)
    {
        var first = _stitches.At(0);
        if (start is null)
            _moves.AddRange(Between(-1, _stitches.Record[0], stopsAllowed: 0));
        else if (start != first)
            _moves.Add(new(RecordKind.Jump, first));
        _moves.Add(new(RecordKind.Stitch, first));
    }

    private void Trail(TapePoint? end)
    {
        if (end is null)
            _moves.AddRange(Between(_stitches.Record[^1], _received.RecordCount, stopsAllowed: 0));
        else if (end != _stitches.At(_stitches.Count - 1))
            _moves.Add(new(RecordKind.Jump, end.Value));
    }

    private void Connect(int index)
    {
        if (_stitches.Record[index] == _stitches.Record[index - 1] + 1)
            _moves.Add(new(RecordKind.Stitch, _stitches.At(index)));
        else
            ConnectAcross(index);
    }

    private void ConnectAcross(int index)
    {
        var asReceived = Between(_stitches.Record[index - 1], _stitches.Record[index], stopsAllowed: 1)
            .Append(new(RecordKind.Stitch, _stitches.At(index)));
        if (_trims is not null && _stitches.Relations[index] == Relation.Cut)
            Trim(index, _trims, asReceived);
        else if (_stitches.Relations[index] == Relation.Thread && IsTooLong(_stitches.At(index - 1), asReceived))
            _moves.AddRange(EvenFloat(index));
        else
            _moves.AddRange(asReceived);
    }

    private bool IsTooLong(TapePoint from, IEnumerable<TapeMove> moves)
    {
        foreach (var move in moves)
        {
            if ((move.To - from).Reach > _maxMove)
                return true;
            from = move.To;
        }

        return false;
    }

    /// <summary>As few jumps as may be, in equal shares, so that a shorter longest move makes no trim of a float.</summary>
    private IEnumerable<TapeMove> EvenFloat(int index)
    {
        var (from, to) = (_stitches.At(index - 1), _stitches.At(index));
        var way = new MoveSplit(from, to, Math.Max(_stitches.Jumps[index] + 1, MoveSplit.RecordsFor((to - from).Reach, _maxMove)));
        return Enumerable.Range(1, way.Count)
            .Select(k => new TapeMove(k == way.Count ? RecordKind.Stitch : RecordKind.Jump, way.At(k)));
    }

    private void Trim(int index, TrimMoves trims, IEnumerable<TapeMove> asReceived)
    {
        var trim = trims.Between(_stitches.At(index - 1), _stitches.At(index)).ToList();
        TrimsChanged |= !trim.SequenceEqual(asReceived);
        _moves.AddRange(trim);
    }

    /// <summary>
    /// The records between two others, as received. A stop beyond those allowed is kept only as the move it makes.
    /// </summary>
    private IEnumerable<TapeMove> Between(int before, int behind, int stopsAllowed)
    {
        var stops = 0;
        for (var record = before + 1; record < behind; record++)
        {
            var at = _received.PositionBehind(record);
            if (_received.Kinds[record] != RecordKind.ColorStop)
                yield return new(RecordKind.Jump, at);
            else if (stops++ < stopsAllowed)
                yield return new(RecordKind.ColorStop, at);
            else if (at != (record == 0 ? TapePoint.Origin : _received.PositionBehind(record - 1)))
                yield return new(RecordKind.Jump, at);
        }
    }
}
