using CapPrep.Engine.Tapes;

namespace CapPrep.Drawing.Tests.Builders;

/// <summary>Makes a tape record by record, in tape units.</summary>
internal sealed class StitchPen
{
    private readonly List<RecordKind> _kinds = [];
    private readonly List<int> _x = [];
    private readonly List<int> _y = [];

    public int Count => _kinds.Count;

    public StitchPen Stitch(int x, int y) => Add(RecordKind.Stitch, x, y);

    public StitchPen Stop() => Add(RecordKind.ColorStop, _x.LastOrDefault(), _y.LastOrDefault());

    /// <summary>A trim: three jumps on the way.</summary>
    public StitchPen TrimTo(int x, int y)
    {
        var (fromX, fromY) = (_x.LastOrDefault(), _y.LastOrDefault());
        for (var i = 1; i <= 3; i++)
            Add(RecordKind.Jump, fromX + ((x - fromX) * i / 3), fromY + ((y - fromY) * i / 3));
        return this;
    }

    /// <summary>A column of zigzag stitches, upright or lying, with a pitch of 0.4 mm.</summary>
    public StitchPen Column(int left, int bottom, int width, int height)
    {
        var lying = width > height;
        for (var i = 0; i <= (lying ? width : height); i += 2)
        {
            var far = i / 2 % 2 == 1;
            Stitch(lying ? left + i : left + (far ? width : 0), lying ? bottom + (far ? height : 0) : bottom + i);
        }

        return this;
    }

    /// <summary>Rows across, 0.4 mm apart, stitches of 3 mm.</summary>
    public StitchPen Fill(int left, int bottom, int width, int height)
    {
        for (var row = 0; row * 4 <= height; row++)
            for (var i = 0; i <= width; i += 30)
                Stitch(row % 2 == 0 ? left + i : left + width - i, bottom + (row * 4));
        return this;
    }

    public Tape Tape() => new(new TapeHeader(), [.. _kinds], [.. _x], [.. _y], []);

    private StitchPen Add(RecordKind kind, int x, int y)
    {
        _kinds.Add(kind);
        _x.Add(x);
        _y.Add(y);
        return this;
    }
}
