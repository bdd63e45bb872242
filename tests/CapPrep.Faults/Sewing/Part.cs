using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Sewing;

/// <summary>How a part is reached from the one before it in its block.</summary>
internal enum Reach
{
    /// <summary>By thread where that is short enough not to be seen, else by a trim.</summary>
    Short,

    /// <summary>By running stitches, since something sewn later hides them.</summary>
    Hidden,
    Trim,

    /// <summary>By thread, however far: a fault.</summary>
    Loose,
}

/// <summary>One thing that a digitizer draws and sews whole: a column, a fill, a border, a letter.</summary>
internal abstract record Part
{
    /// <summary>Unique in the design; what a planted fault is told by.</summary>
    public required string Name { get; init; }

    public Reach Reach { get; init; } = Reach.Short;

    /// <summary>Name of the text line it is a letter of.</summary>
    public string? Line { get; init; }

    /// <summary>Which letter of its line, from the viewer's left, from 0.</summary>
    public int Glyph { get; init; } = -1;

    /// <summary>Parts of one group are sewn into one another and cannot be told apart.</summary>
    public string? Group { get; init; }

    public abstract IReadOnlyList<Dot> Dots();

    /// <summary>Box of what is seen of it, else of all.</summary>
    public Rect Box
    {
        get
        {
            var dots = Dots();
            var seen = dots.Where(dot => dot.Purpose == Purpose.Top).ToList();
            return Rect.Of((seen.Count > 0 ? seen : dots).Select(dot => dot.At));
        }
    }
}

/// <summary>A part sewn last stitch first, and mapped to other places.</summary>
internal sealed record Changed(Part Inner, Func<Vec, Vec> Map, bool Backward = false) : Part
{
    public static Changed Of(Part inner, Func<Vec, Vec> map, bool backward = false) => new(inner, map, backward)
    {
        Name = inner.Name,
        Reach = inner.Reach,
        Line = inner.Line,
        Glyph = inner.Glyph,
        Group = inner.Group,
    };

    public override IReadOnlyList<Dot> Dots()
    {
        var dots = Inner.Dots().Select(dot => dot with { At = Map(dot.At) }).ToList();
        if (!Backward)
            return dots;
        var joints = dots.Select(dot => dot.Joint).ToList();
        dots.Reverse();
        return [.. dots.Select((dot, k) => dot with { Joint = k == 0 ? Joint.Thread : joints[dots.Count - k] })];
    }
}

/// <summary>Stitches given one by one.</summary>
internal sealed record GivenDots(IReadOnlyList<Dot> Given) : Part
{
    public override IReadOnlyList<Dot> Dots() => Given;
}
