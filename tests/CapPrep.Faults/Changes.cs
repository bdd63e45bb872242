using CapPrep.FaultCorpus.Geometry;
using CapPrep.FaultCorpus.Sewing;
using CapPrep.FaultCorpus.Tapes;

namespace CapPrep.FaultCorpus;

/// <summary>The same work in other clothes: what is said of it must not change.</summary>
public static class Changes
{
    /// <summary>Seen in a mirror that stands on the seam.</summary>
    public static CorpusTape Mirrored(this CorpusTape tape) => tape.WithDetour(-1, 1).With(needle => needle with { X = -needle.X }) with
    {
        Ticket = tape.Ticket with
        {
            OffsetRightMm = -tape.Ticket.OffsetRightMm,
            CenterXMm = -tape.Ticket.CenterXMm,
            Location = tape.Ticket.Location switch
            {
                "left" => "right",
                "right" => "left",
                "frontLeft" => "frontRight",
                "frontRight" => "frontLeft",
                var same => same,
            },
        },
        Truth = tape.Truth.Mapped(box => new(-box.Right, box.Bottom, -box.Left, box.Top)),
    };

    /// <summary>Begun at another place of the machine; the ticket seats by the box.</summary>
    public static CorpusTape Shifted(this CorpusTape tape, int dx, int dy) => tape.With(needle => needle with { X = needle.X + dx, Y = needle.Y + dy });

    /// <summary>Stored upside down, as the ticket says.</summary>
    public static CorpusTape Turned(this CorpusTape tape) => tape.WithDetour(-1, -1).With(needle => needle with { X = -needle.X, Y = -needle.Y }) with
    {
        Ticket = tape.Ticket with { TapeIs = "turned", CenterXMm = -tape.Ticket.CenterXMm },
    };

    /// <summary>The same needle points by other jump records.</summary>
    public static CorpusTape Rerecorded(this CorpusTape tape)
    {
        var habits = tape.Habits with { LandsByJump = !tape.Habits.LandsByJump };
        return tape with { Habits = habits, Bytes = TapeFile.Of(tape.Needles, habits, tape.File) };
    }

    /// <summary>Every thread has another name and code.</summary>
    public static CorpusTape Renamed(this CorpusTape tape) => tape with
    {
        Ticket = tape.Ticket with { Threads = [.. tape.Ticket.Threads.Select(thread => thread with { Name = $"No. {thread.Color[1..]}" })] },
    };

    /// <summary>A trim where one part leads to the next by thread; the machine ties by itself. Null: there is no such place.</summary>
    public static CorpusTape? Split(this CorpusTape tape)
    {
        var at = Enumerable.Range(1, Math.Max(0, tape.Needles.Count - 1)).FirstOrDefault(k =>
            tape.Needles[k].Joint is Joint.Thread or Joint.Float && tape.Needles[k].Part != tape.Needles[k - 1].Part);
        return at == 0 ? null : tape.WithNeedles([.. tape.Needles.Select((needle, k) => k == at ? needle with { Joint = Joint.Trim } : needle)]);
    }

    private static CorpusTape WithDetour(this CorpusTape tape, int x, int y) =>
        tape.File.Detour is { } detour ? tape with { File = tape.File with { Detour = new(detour.X * x, detour.Y * y) } } : tape;

    private static CorpusTape With(this CorpusTape tape, Func<Needle, Needle> change) => tape.WithNeedles([.. tape.Needles.Select(change)]);

    private static CorpusTape WithNeedles(this CorpusTape tape, IReadOnlyList<Needle> needles) =>
        tape with { Needles = needles, Bytes = TapeFile.Of(needles, tape.Habits, tape.File) };

    private static Truth Mapped(this Truth truth, Func<Rect, Rect> map) => truth with
    {
        Box = map(truth.Box),
        Lines = [.. truth.Lines.Select(line => line with { Glyphs = [.. line.Glyphs.Select(map)] })],
        Fault = truth.Fault is { Place: { } place } fault ? fault with { Place = map(place) } : truth.Fault,
    };
}
