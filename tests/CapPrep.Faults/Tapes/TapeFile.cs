using System.Globalization;
using System.Text;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus.Tapes;

/// <summary>Writes needle points as a tape file: a header of 512 bytes and records of three.</summary>
internal sealed class TapeFile
{
    private readonly List<byte[]> _records = [];
    private readonly Habits _habits;
    private readonly FileHabits _file;
    private int _x;
    private int _y;
    private bool _detoured;

    private TapeFile(Habits habits, FileHabits file) => (_habits, _file) = (habits, file);

    internal static byte[] Of(IReadOnlyList<Needle> needles, Habits habits, FileHabits file)
    {
        var tape = new TapeFile(habits, file);
        for (var k = 0; k < needles.Count; k++)
            tape.Add(needles[k], k, needles.Count);
        tape.GoHome();
        return [.. tape.Header(needles), .. tape._records.SelectMany(record => record), .. tape.Tail()];
    }

    private void Add(Needle needle, int index, int count)
    {
        if (_file.Detour is { } detour && index > 0 && Ties.IsCut(needle.Joint) && !_detoured)
        {
            _detoured = true;
            MoveBy(_x + (int)(detour.X * 10), _y + (int)(detour.Y * 10), least: 0, lands: true);
        }

        if (index == 0)
            MoveBy(needle.X, needle.Y, least: 0);
        else if (needle.Joint == Joint.Trim)
            MoveBy(needle.X, needle.Y, Math.Max(_habits.TrimJumps, 1));
        else if (needle.Joint == Joint.Stop)
            StopThen(needle);
        else if (needle.Joint == Joint.Float || Math.Max(Math.Abs(needle.X - _x), Math.Abs(needle.Y - _y)) > Record.Longest)
            Float(needle);
        Put(Record.Stitch, needle.X, needle.Y);
        if (_file.ZeroStitches > 0 && (index + 1) % Math.Max(1, count / _file.ZeroStitches) == 0)
            Put(Record.Stitch, needle.X, needle.Y);
        if (_file.UnknownBits > 0 && (index + 1) % Math.Max(1, count / _file.UnknownBits) == 0)
            _records.Add([0, 0, 0x43]);
    }

    private void StopThen(Needle needle)
    {
        _records.Add(Record.Of(Record.Stop, 0, 0));
        if (_file.EmptyBlock && _records.Count(record => record[2] == Record.Stop) == 1)
            _records.Add(Record.Of(Record.Stop, 0, 0));
        MoveBy(needle.X, needle.Y, least: 0);
    }

    private void Float(Needle needle)
    {
        var (dx, dy) = (needle.X - _x, needle.Y - _y);
        var jumps = Math.Max(1, ((Math.Max(Math.Abs(dx), Math.Abs(dy)) + Record.Longest - 1) / Record.Longest) - 1);
        if (jumps >= _habits.TrimJumps)
            throw new InvalidOperationException("This float would be read as a trim.");
        for (var k = 1; k <= jumps; k++)
            Put(Record.Jump, _x + (dx / (jumps + 1)), _y + (dy / (jumps + 1)));
    }

    /// <summary>Jumps to a place or, where the stitch record itself shall move, to just before it.</summary>
    private void MoveBy(int x, int y, int least, bool lands = false)
    {
        var (fromX, fromY) = (_x, _y);
        var (dx, dy) = (x - _x, y - _y);
        var far = Math.Max(Math.Abs(dx), Math.Abs(dy));
        var steps = Math.Max(least, (far + Record.Longest - 1) / Record.Longest);
        var parts = lands || _habits.LandsByJump ? steps : steps + 1;
        for (var k = 1; k <= steps; k++)
            Put(Record.Jump, fromX + (dx * k / Math.Max(1, parts)), fromY + (dy * k / Math.Max(1, parts)));
    }

    private void GoHome()
    {
        MoveBy(0, 0, least: 0);
        if (_x != 0 || _y != 0)
            Put(Record.Jump, 0, 0);
    }

    private void Put(byte kind, int x, int y)
    {
        _records.Add(Record.Of(kind, x - _x, y - _y));
        (_x, _y) = (x, y);
    }

    private IEnumerable<byte> Tail()
    {
        IEnumerable<byte> end = _file.EndRecord ? Record.End : [];
        IEnumerable<byte> after = Enumerable.Range(0, _file.AfterEnd).SelectMany(_ => Record.Of(Record.Stitch, 5, 5));
        return [.. end, .. after, .. new byte[_file.StrayBytes]];
    }

    private byte[] Header(IReadOnlyList<Needle> needles)
    {
        var stops = _records.Count(record => record[2] == Record.Stop) + _file.AnnouncedExtraStops;
        var off = _file.ExtentsOff;
        var lines = string.Create(
            CultureInfo.InvariantCulture,
            $"LA:{"CORPUS",-16}\rST:{(int)(_records.Count * _file.AnnouncedShare) + 1,7}\rCO:{stops,3}\r"
            + $"+X:{Math.Max(0, needles.Max(n => n.X)) + off,5}\r-X:{Math.Max(0, -needles.Min(n => n.X)) + off,5}\r"
            + $"+Y:{Math.Max(0, needles.Max(n => n.Y)) + off,5}\r-Y:{Math.Max(0, -needles.Min(n => n.Y)) + off,5}\r"
            + $"AX:+{_x,5}\rAY:+{_y,5}\rMX:+{0,5}\rMY:+{0,5}\rPD:******\r");
        var header = Enumerable.Repeat((byte)0x20, 512).ToArray();
        Encoding.ASCII.GetBytes(lines).CopyTo(header, 0);
        header[Encoding.ASCII.GetByteCount(lines)] = 0x1A;
        return header;
    }
}
