using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;

namespace CapPrep.Engine.Tapes;

/// <summary>How a penetration is connected to the one before it.</summary>
public enum Relation : byte
{
    /// <summary>The first penetration of the tape has nothing before it.</summary>
    First,

    /// <summary>Connected by thread, across at most <c>trimJumps - 1</c> jump records.</summary>
    Thread,

    /// <summary>A run of at least <c>trimJumps</c> jump records lies between: the thread is cut.</summary>
    Cut,

    /// <summary>At least one color stop lies between.</summary>
    Stop,
}

/// <summary>
/// The needle penetrations of a tape in time order, with the color block each belongs to and how each is connected
/// to the one before. The needle does not penetrate at a jump. Jumps before the first and after the last
/// penetration are no relation and never a trim.
/// </summary>
public sealed class StitchSequence
{
    private readonly int[] _x;
    private readonly int[] _y;
    private readonly int[] _record;
    private readonly int[] _block;
    private readonly Relation[] _relation;
    private readonly int[] _jumps;
    private Box? _extents;

    private StitchSequence(int count)
    {
        _x = new int[count];
        _y = new int[count];
        _record = new int[count];
        _block = new int[count];
        _relation = new Relation[count];
        _jumps = new int[count];
    }

    public int Count => _x.Length;

    /// <summary>Position in tape units.</summary>
    public ReadOnlySpan<int> X => _x;

    public ReadOnlySpan<int> Y => _y;

    /// <summary>Index of the record that makes the penetration.</summary>
    public ReadOnlySpan<int> Record => _record;

    /// <summary>
    /// Color block, counted from 1 over blocks that hold a penetration; empty blocks do not count.
    /// </summary>
    public ReadOnlySpan<int> Block => _block;

    public ReadOnlySpan<Relation> Relations => _relation;

    /// <summary>Jump records between this penetration and the one before.</summary>
    public ReadOnlySpan<int> Jumps => _jumps;

    /// <summary>Color blocks that hold a penetration.</summary>
    public int Blocks => Count == 0 ? 0 : _block[^1];

    public TapePoint At(int index) => new(_x[index], _y[index]);

    /// <summary>Decodes a tape.</summary>
    /// <param name="tape">The tape as read.</param>
    /// <param name="trimJumps">Consecutive jump records that mean a trim, at least 1; a setting of the machine.</param>
    public static StitchSequence Of(Tape tape, int trimJumps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trimJumps, 1);
        var sequence = new StitchSequence(tape.Kinds.Count(RecordKind.Stitch));
        var next = 0;
        var gap = default(Gap);
        for (var record = 0; record < tape.RecordCount; record++)
        {
            var kind = tape.Kinds[record];
            if (kind == RecordKind.Stitch)
            {
                sequence.Put(next++, record, tape.PositionBehind(record), gap, trimJumps);
                gap = default;
            }
            else
            {
                gap.Add(kind);
            }
        }

        return sequence.Measured();
    }

    private void Put(int index, int record, TapePoint at, in Gap gap, int trimJumps)
    {
        _x[index] = at.X;
        _y[index] = at.Y;
        _record[index] = record;
        if (index == 0)
        {
            _block[0] = 1;
            return;
        }

        _block[index] = _block[index - 1] + (gap.Stopped ? 1 : 0);
        _relation[index] = gap.RelationFor(trimJumps);
        _jumps[index] = gap.Jumps;
    }

    /// <summary>Smallest box around all penetrations; the tape must hold at least one.</summary>
    public Box Extents() => _extents ?? throw new InvalidOperationException("The tape holds no penetration.");

    /// <summary>The cells that covers of its threads lie on.</summary>
    internal CellGrid Grid => CellGrid.Of(Extents());

    private StitchSequence Measured()
    {
        if (Count > 0)
            _extents = Enumerable.Range(1, Count - 1).Aggregate(Box.Of(At(0)), (box, i) => box.Union(At(i)));
        return this;
    }
}
